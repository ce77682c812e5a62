import { ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { zoneExists } from '@/lib/time/zone';
import type { Metre } from '@/lib/units/quantity';
import { checkAnswer } from '@/lib/weather/checks/check-answer';
import { completeHours, type SiteHours } from '@/lib/weather/complete-hours';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { DateStretch } from '@/lib/weather/past';
import type { Site } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { adaptOpenMeteo } from './adapt';
import { askOpenMeteo } from './ask-open-meteo';
import { points } from './ask-sites';
import { HOURLY, OPEN_METEO } from './request';
import { openMeteoHoursSchema } from './schema';

export type PastHours = SiteHours & { readonly elevation: Metre; readonly zone: string };

export type PastQuestion = {
  readonly site: Site;
  readonly stretch: DateStretch;
  /** The archive lies some days behind; the forecast host keeps the last three months. */
  readonly from: 'archive' | 'recent';
};

/** Hours as they were at a site: reanalysis, or the newest forecasts of each hour for the last months. */
export async function requestPastHours(
  { site, stretch, from }: PastQuestion,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<PastHours, SourceProblem>> {
  const json = await askOpenMeteo(
    {
      host: from === 'archive' ? 'openMeteoArchive' : 'openMeteo',
      path: from === 'archive' ? '/v1/archive' : '/v1/forecast',
      parameters: {
        ...points([site]),
        start_date: stretch.from,
        end_date: stretch.to,
        hourly: HOURLY,
        timeformat: 'unixtime',
        // Only for the name of the zone; unix times stay in UTC.
        timezone: 'auto',
      },
    },
    deadline,
    deps,
  );
  if (!json.ok) return json;
  const wire = parseAnswer(openMeteoHoursSchema, json.value);
  if (!wire.ok) return wire;
  const answer = adaptOpenMeteo(wire.value);
  if (!answer.ok) return answer;
  const checked = checkAnswer(answer.value, { ...WAYS, site, now: null, ...reach(stretch) });
  if (!checked.ok) return checked;
  const elevation = site.elevation ?? answer.value.elevation;
  const hours = completeHours(checked.value.answer, elevation);
  if (!hours.ok) return hours;
  const zone = wire.value.timezone ?? 'UTC';
  return ok({ ...hours.value, elevation, zone: zoneExists(zone) ? zone : 'UTC' });
}

const { repeatsElevation, movesTemperatureOnly } = OPEN_METEO.habits;
const WAYS = { repeatsElevation, movesTemperatureOnly };

/** Days are counted in the place's own zone, which lies up to 14 h from UTC; an hour more for a change of the clocks. */
const ZONE_MS = 15 * HOUR_MS;

function reach({ from, to }: DateStretch): { readonly earliest: Instant; readonly latest: Instant } {
  const midnight = (date: string): number => Date.parse(`${date}T00:00Z`);
  return {
    earliest: instant(midnight(from) - ZONE_MS),
    latest: instant(midnight(to) + 24 * HOUR_MS + ZONE_MS),
  };
}
