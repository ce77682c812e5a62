import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Coordinates } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import { address, coordinate } from '@/lib/weather/request/address';
import { ask } from '@/lib/weather/request/ask';
import type { Answer } from '@/lib/weather/request/attempt';
import { userAgent } from '@/lib/weather/request/user-agent';
import type { Source, SourceQuestion, SourceReply } from '@/lib/weather/source';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { adaptWeatherGov } from './adapt';
import { coversUnitedStates } from './area';
import { type WeatherGovPoint, weatherGovGridSchema, weatherGovPointSchema } from './schema';

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

/** How long a point's grid cell is believed. */
const CELL_KEPT_MS = 7 * 24 * HOUR_MS;

const cellKey = ({ latitude, longitude }: Coordinates): string =>
  `${coordinate(latitude)},${coordinate(longitude)}`;

async function gridCell(
  question: SourceQuestion,
  deps: WeatherDeps,
): Promise<Result<{ cell: WeatherGovPoint; kept: boolean }, SourceProblem>> {
  const kept = deps.memory.gridCells.get(cellKey(question.site));
  if (kept !== undefined && deps.now() < kept.freshUntil) return ok({ cell: kept.value, kept: true });
  const cell = await lookUpCell(question, deps);
  return cell.ok ? ok({ cell: cell.value, kept: false }) : cell;
}

async function lookUpCell(
  { site, deadline }: SourceQuestion,
  deps: WeatherDeps,
): Promise<Result<WeatherGovPoint, SourceProblem>> {
  const reply = await askWeatherGov(`/points/${cellKey(site)}`, deadline, deps);
  if (!reply.ok) return isNotFound(reply.reason) ? fail({ code: 'outside-area' }) : reply;
  const wire = parseAnswer(weatherGovPointSchema, reply.value);
  if (!wire.ok) return wire;
  const cell = wire.value.properties;
  deps.memory.gridCells.set(cellKey(site), { value: cell, freshUntil: instant(deps.now() + CELL_KEPT_MS) });
  return ok(cell);
}

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

async function askWeatherGov(
  path: string,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<unknown, SourceProblem>> {
  const { baseUrls, contact } = deps.settings();
  if (baseUrls.weatherGov === null) return fail({ code: 'bad-address' });
  // Unknown query parameters are answered with 400, so there are none.
  const url = address(baseUrls.weatherGov, path);
  const headers = { 'user-agent': userAgent(contact), accept: 'application/geo+json' };
  const reply: Result<Answer, SourceProblem> = await ask(
    { host: 'weatherGov', url, headers, deadline },
    deps,
  );
  if (!reply.ok) return reply;
  return reply.value.kind === 'body' ? ok(reply.value.json) : fail({ code: 'bad-status', status: 304 });
}

function isNotFound(problem: SourceProblem): boolean {
  return problem.code === 'bad-status' && problem.status === 404;
}
