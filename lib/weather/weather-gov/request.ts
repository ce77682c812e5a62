import { ok, type Result } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { SourceProblem } from '@/lib/weather/problem';
import type { Source, SourceReply } from '@/lib/weather/source';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { adaptWeatherGov } from './adapt';
import { coversUnitedStates } from './area';
import { askWeatherGov, isNotFound } from './ask';
import { gridCell, lookUpCell } from './grid-cell';
import { type WeatherGovPoint, weatherGovGridSchema } from './schema';

export const WEATHER_GOV: Source = {
  name: 'weather-gov',
  label: 'US National Weather Service',
  attribution: 'Forecast by the US National Weather Service',
  attributionUrl: 'https://www.weather.gov/',
  covers: coversUnitedStates,
  isRawModel: () => false,
  habits: {
    movesTemperatureOnly: false,
    repeatsElevation: false,
    // A grid begins some hours before it was issued, and may be a day old.
    backMs: 36 * HOUR_MS,
    aheadMs: 10 * 24 * HOUR_MS,
  },
  async request(question, deps) {
    const known = await gridCell(question, deps);
    if (!known.ok) return known;
    const first = await requestGrid(known.value.cell, question.deadline, deps);
    if (first.ok || !known.value.kept || !isNotFound(first.reason)) return first;
    // Grids are redrawn now and then, and a kept cell may have become open sea: look it up again, once.
    const renewed = await lookUpCell(question, deps);
    return renewed.ok ? requestGrid(renewed.value, question.deadline, deps) : renewed;
  },
};

async function requestGrid(
  { gridId, gridX, gridY }: WeatherGovPoint,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<SourceReply, SourceProblem>> {
  // The path is made from the checked cell; the address that the service sends along is never followed.
  const reply = await askWeatherGov(`/gridpoints/${gridId}/${gridX},${gridY}`, deadline, deps);
  if (!reply.ok) return reply;
  const wire = parseAnswer(weatherGovGridSchema, reply.value);
  if (!wire.ok) return wire;
  const answer = adaptWeatherGov(wire.value);
  if (!answer.ok) return answer;
  return ok({ kind: 'answer', answer: answer.value, validity: { expires: null, lastModified: null } });
}
