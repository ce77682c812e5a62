import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { localDate, offsetMinutes } from '@/lib/time/zone';
import { kelvin, type Metre, pascal, ratio } from '@/lib/units/quantity';
import { siteKey } from './copy';
import { lookUp } from './lookup';
import { type PastHours, requestPastHours } from './open-meteo/past';
import type { DateStretch, PastMonth, PastSeason } from './past';
import { percentiles } from './percentiles';
import type { Coordinates, Site } from './place';
import type { LookupProblem, SourceProblem } from './problem';
import { readSite } from './read-site';
import type { SiteHour } from './site-hour';
import { pastStretches } from './stretches';
import type { WeatherDeps } from './weather-deps';

export type HistoryQuestion = Coordinates & {
  readonly elevation: Metre | null;
  /** 1 to 12. */
  readonly months: readonly number[];
  /** How many past years. */
  readonly years: number;
  /** Local clock hours that people ride in: from the first up to, not with, the last. */
  readonly ridingHours: { readonly first: number; readonly last: number };
};

const SEASONS_FRESH_MS = 7 * 24 * HOUR_MS;

/** How warm, and under what pressure, the riding hours of given months were in past years. */
export async function getHistory(
  question: HistoryQuestion,
  deps: WeatherDeps,
): Promise<Result<PastSeason, LookupProblem>> {
  const site = readSite(question);
  if (!site.ok) return site;
  const { years, ridingHours } = question;
  // In the order asked for: a winter begins with December.
  const wanted = [...new Set(question.months)];
  const stretches = pastStretches(wanted, years, deps.now());
  const key = [
    siteKey(site.value),
    wanted,
    stretches.at(-1)?.to,
    years,
    ridingHours.first,
    ridingHours.last,
  ].join(';');
  const ask = (deadline: AbortSignal) =>
    askStretches({ site: site.value, stretches, question: { ...question, months: wanted } }, deadline, deps);
  return lookUp(deps.memory.seasons, { key, freshMs: SEASONS_FRESH_MS, ask }, deps);
}

type Asked = {
  readonly site: Site;
  readonly stretches: readonly DateStretch[];
  readonly question: HistoryQuestion;
};

/** One stretch after the other; those that cannot be had are left out, as long as one can. */
async function askStretches(
  { site, stretches, question }: Asked,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<PastSeason, SourceProblem>> {
  const got: { readonly stretch: DateStretch; readonly past: PastHours }[] = [];
  let problem: SourceProblem = { code: 'no-hours' };
  for (const stretch of stretches) {
    const past = await requestPastHours({ site, stretch, from: 'archive' }, deadline, deps);
    if (past.ok && past.value.hasPressure) got.push({ stretch, past: past.value });
    else problem = past.ok ? { code: 'no-pressure' } : past.reason;
  }
  const first = got[0]?.past;
  if (first === undefined) return fail(problem);
  const hours = got.flatMap(({ past }) => past.hours);
  const months = question.months.map((month) =>
    pastMonth(month, hours, { ...question.ridingHours, zone: first.zone }),
  );
  return ok({
    elevation: first.elevation,
    zone: first.zone,
    months: months.filter((month) => month !== null),
    stretches: got.map(({ stretch }) => stretch),
  });
}

function pastMonth(
  month: number,
  hours: readonly SiteHour[],
  riding: HistoryQuestion['ridingHours'] & { readonly zone: string },
): PastMonth | null {
  const ridden = hours.filter(({ at }) => {
    const hour = localHour(at, riding.zone);
    return localMonth(at, riding.zone) === month && hour >= riding.first && hour < riding.last;
  });
  const pressures = ridden.map((hour) => hour.pressure).filter((pressure) => pressure !== null);
  if (pressures.length === 0) return null;
  return {
    month,
    hours: ridden.length,
    temperature: percentiles(
      ridden.map((hour) => hour.temperature),
      kelvin,
    ),
    pressure: percentiles(pressures, pascal),
    relativeHumidity: percentiles(
      ridden.map((hour) => hour.relativeHumidity),
      ratio,
    ),
  };
}

function localMonth(at: Instant, zone: string): number {
  return Number(localDate(at, zone).slice(5, 7));
}

function localHour(at: Instant, zone: string): number {
  const local = instant(at + offsetMinutes(at, zone) * MINUTE_MS);
  return Math.floor(local / HOUR_MS) % 24;
}
