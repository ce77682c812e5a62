import { hourAt } from '@/lib/hours/at';
import type { Hour } from '@/lib/hours/series';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import type { Metre } from '@/lib/units/quantity';
import { siteKey } from './copy';
import { lookUp } from './lookup';
import { type PastHours, requestPastHours } from './open-meteo/past';
import type { PastAir } from './past';
import type { Coordinates, Site } from './place';
import type { LookupProblem, SourceProblem } from './problem';
import { readSite } from './read-site';
import type { WeatherDeps } from './weather-deps';

export type PastAirQuestion = Coordinates & { readonly elevation: Metre | null; readonly at: Instant };

const PAST_AIR_FRESH_MS = 7 * 24 * HOUR_MS;
/** The forecast host keeps 92 days; older hours come from the archive. */
const RECENT_MS = 90 * 24 * HOUR_MS;
/** ERA5 begins on 1 January 1940. */
const ARCHIVE_BEGINS = instant(Date.UTC(1940, 0, 2));

/** The air at a place at a past moment, for a baseline that was proven then. */
export async function getPastAir(
  question: PastAirQuestion,
  deps: WeatherDeps,
): Promise<Result<PastAir, LookupProblem>> {
  const site = readSite(question);
  if (!site.ok) return site;
  const { at } = question;
  const now = deps.now();
  if (at > now || at < ARCHIVE_BEGINS) return fail({ code: 'not-in-archive', at });
  const ask = (deadline: AbortSignal) => askMoment({ site: site.value, at }, deadline, deps);
  return lookUp(
    deps.memory.pastAir,
    { key: `${siteKey(site.value)};${at}`, freshMs: PAST_AIR_FRESH_MS, ask },
    deps,
  );
}

async function askMoment(
  { site, at }: { readonly site: Site; readonly at: Instant },
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<PastAir, SourceProblem>> {
  const day = (offset: number): string => localDate(instant(at + offset), 'UTC');
  const past = await requestPastHours(
    {
      site,
      // A day on either side: the service counts days in the place's own zone.
      stretch: { from: day(-24 * HOUR_MS), to: day(Math.min(24 * HOUR_MS, deps.now() - at + HOUR_MS)) },
      from: deps.now() - at < RECENT_MS ? 'recent' : 'archive',
    },
    deadline,
    deps,
  );
  if (!past.ok) return past;
  const air = airBetween(past.value, at);
  return air === null ? fail({ code: 'no-hours' }) : ok(air);
}

/** Between the hours around a moment, as everywhere (lib/hours); null where they are not there or too far apart. */
function airBetween(past: PastHours, at: Instant): PastAir | null {
  const hours = past.hours.flatMap((hour): readonly Hour[] =>
    hour.pressure === null ? [] : [{ ...hour, pressure: hour.pressure, origin: 'forecast' }],
  );
  const hour = hourAt({ hours }, at);
  if (hour === null) return null;
  const { temperature, pressure, pressureFrom, relativeHumidity } = hour;
  return { at, elevation: past.elevation, temperature, pressure, pressureFrom, relativeHumidity };
}
