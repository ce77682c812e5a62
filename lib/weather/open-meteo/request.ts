import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import { isNear } from '@/lib/weather/checks/place';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Site } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { Source, SourceReply } from '@/lib/weather/source';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { adaptOpenMeteo } from './adapt';
import { askForSite } from './ask-sites';
import { openMeteoEnsembleSchema, openMeteoHoursSchema } from './schema';
import { SKY } from './sky';
import { adaptSpread, type TemperatureSpread } from './spread';

/** From this morning's heats to an event ten days ahead. */
const [BACK_H, AHEAD_H] = [24, 240];
const WINDOW = { past_hours: String(BACK_H), forecast_hours: String(AHEAD_H) };
/** An answer may have waited in a cache on the way. Judgement. */
const SLACK_H = 6;
/** Local clock times come with one offset for all rows, wrong after a change of the clocks: ask for none. */
const TIMES = { timeformat: 'unixtime', timezone: 'GMT' };
export const HOURLY = 'temperature_2m,relative_humidity_2m,dew_point_2m,surface_pressure,pressure_msl';

/** Kilometres per hour are what comes unasked. */
const UNITS = { wind_speed_unit: 'ms' };

export const OPEN_METEO: Source = {
  name: 'open-meteo',
  label: 'Open-Meteo',
  attribution: 'Weather data by Open-Meteo.com',
  attributionUrl: 'https://open-meteo.com/',
  covers: () => true,
  isRawModel: () => true,
  habits: {
    // Its dew point is made of the temperature at the height asked for.
    movesTemperatureOnly: false,
    repeatsElevation: true,
    backMs: (BACK_H + SLACK_H) * HOUR_MS,
    aheadMs: (AHEAD_H + SLACK_H) * HOUR_MS,
  },
  async request({ site, deadline }, deps) {
    const question = {
      host: 'openMeteo',
      path: '/v1/forecast',
      parameters: { hourly: `${HOURLY},${SKY}`, ...UNITS, ...WINDOW, ...TIMES },
    } as const;
    const json = await askForSite(site, question, deadline, deps);
    if (!json.ok) return json;
    const wire = parseAnswer(openMeteoHoursSchema, json.value);
    if (!wire.ok) return wire;
    const answer = adaptOpenMeteo(wire.value);
    if (!answer.ok) return answer;
    return ok<SourceReply>({
      kind: 'answer',
      answer: answer.value,
      validity: { expires: null, lastModified: null },
    });
  },
};

/** The spread of an ensemble's temperature at the site. */
export async function requestSpread(
  site: Site,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<TemperatureSpread, SourceProblem>> {
  const models = deps.settings().ensembleModel;
  const question = {
    host: 'openMeteoEnsemble',
    path: '/v1/ensemble',
    parameters: { hourly: 'temperature_2m_spread', models, ...WINDOW, ...TIMES },
  } as const;
  const json = await askForSite(site, question, deadline, deps);
  if (!json.ok) return json;
  const wire = parseAnswer(openMeteoEnsembleSchema, json.value);
  if (!wire.ok) return wire;
  const { latitude = site.latitude, longitude = site.longitude } = wire.value;
  return isNear({ latitude, longitude }, site) ? adaptSpread(wire.value) : fail({ code: 'other-place' });
}
