import { ok, type Result } from '@/lib/result/result';
import { zoneExists } from '@/lib/time/zone';
import type { Metre } from '@/lib/units/quantity';
import { completeHours, type SiteHours } from '@/lib/weather/complete-hours';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Stretch } from '@/lib/weather/past';
import type { Site } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { adaptOpenMeteo } from './adapt';
import { askOpenMeteo, HOURLY, point } from './request';
import { openMeteoHoursSchema } from './schema';

export type PastHours = SiteHours & { readonly elevation: Metre; readonly zone: string };

export type PastQuestion = {
  readonly site: Site;
  readonly stretch: Stretch;
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
        ...point(site),
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
  const elevation = site.elevation ?? answer.value.elevation;
  const hours = completeHours(answer.value, elevation);
  if (!hours.ok) return hours;
  const zone = wire.value.timezone ?? 'UTC';
  return ok({ ...hours.value, elevation, zone: zoneExists(zone) ? zone : 'UTC' });
}
