import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { askSource } from './ask-source';
import { assembleForecast } from './assemble';
import { type Copy, copyKey, isUsable } from './copy';
import type { Forecast } from './forecast';
import type { Kept } from './kept';
import { sourcesFor } from './order';
import type { Site } from './place';
import type { SourceTry, WeatherProblem } from './problem';
import { type RaceResult, race } from './race';
import type { Source } from './source';
import { rememberedSpread, type SpreadAnswer, spreadFor } from './spread-for';
import type { WeatherDeps } from './weather-deps';

/** With no complete answer, what there is is served on and the services are tried again after this [ms]. */
const SECOND_BEST_MS = MINUTE_MS / 2;
/** With nothing at all to show, others who ask are told so at once for this long [ms]. */
const FAILURE_MS = 10_000;
/** While its spread is on its way, a forecast is put together again after this [ms]; that asks no forecast service. */
const SPREAD_PENDING_MS = MINUTE_MS;

type Found = {
  readonly site: Site;
  readonly sources: readonly Source[];
  readonly lastGood: Copy | null;
  readonly result: RaceResult;
  readonly spread: SpreadAnswer;
};

/** Asks the services for a site and puts the best of what comes back together, or says why there is nothing. */
export async function refreshForecast(
  site: Site,
  deps: WeatherDeps,
): Promise<Kept<Result<Forecast, WeatherProblem>>> {
  const { timings } = deps;
  const deadline = new AbortController();
  // Slow services run on after the race, to fill the memory; this timer is what ends them.
  setTimeout(() => deadline.abort(), timings.totalMs).unref();
  const sources = sourcesFor(site);
  const lastGood = lastGoodCopy(sources, site, deps);
  const result = await race(
    sources.map((source) => ({
      name: source.name,
      ask: () => askSource(source, { site, deadline: deadline.signal }, deps),
    })),
    { hedgeMs: timings.hedgeMs, limitMs: lastGood === null ? timings.totalMs : timings.staleGraceMs },
  );
  const used = result.winner ?? result.withoutPressure ?? lastGood;
  const spread =
    used?.by !== 'open-meteo'
      ? { spread: null, pending: false }
      : result.winner === null
        ? rememberedSpread(site, deps)
        : await spreadFor(site, deadline.signal, deps);
  return choose({ site, sources, lastGood, result, spread }, deps.now());
}

/** The newest complete answer that is not too old. */
function lastGoodCopy(sources: readonly Source[], site: Site, deps: WeatherDeps): Copy | null {
  const copies = sources
    .map((source) => deps.memory.copies.get(copyKey(source.name, site)))
    .filter((copy) => copy !== undefined)
    .filter((copy) => copy.hasPressure && isUsable(copy, deps.now()));
  return copies.reduce<Copy | null>(
    (newest, copy) => (newest === null || copy.fetchedAt > newest.fetchedAt ? copy : newest),
    null,
  );
}

/** A complete answer; else one without pressure, lent from the last good copy; else that copy; else the reasons. */
function choose(found: Found, now: Instant): Kept<Result<Forecast, WeatherProblem>> {
  const { site, sources, lastGood, result, spread } = found;
  const parts = { site, sources, tries: result.tries, spread: spread.spread, lender: lastGood };
  const secondBest = instant(now + SECOND_BEST_MS);
  if (result.winner !== null) {
    const pending = spread.pending ? now + SPREAD_PENDING_MS : Number.POSITIVE_INFINITY;
    const freshUntil = instant(Math.min(result.winner.freshUntil, pending));
    return keep(assembleForecast({ ...parts, copy: result.winner, freshness: 'fresh', freshUntil }));
  }
  if (result.withoutPressure !== null) {
    const copy = result.withoutPressure;
    // The one that is used after all did not fail; its hours say whose the pressure is.
    const tries = parts.tries.filter(({ source }) => source !== copy.by);
    return keep(assembleForecast({ ...parts, tries, copy, freshness: 'fresh', freshUntil: secondBest }));
  }
  if (lastGood !== null)
    return keep(assembleForecast({ ...parts, copy: lastGood, freshness: 'stale', freshUntil: secondBest }));
  const problem = {
    code: 'all-sources-failed',
    tries: result.tries,
    retryAfterSeconds: retryAfter(result.tries, now),
  } as const;
  return { value: fail(problem), freshUntil: instant(now + FAILURE_MS) };
}

function keep(forecast: Forecast): Kept<Result<Forecast, WeatherProblem>> {
  return { value: ok(forecast), freshUntil: forecast.freshUntil };
}

const RETRY_LEAST_S = 10;
const RETRY_MOST_S = 3600;
const RETRY_DEFAULT_S = 30;

/** When the first service may be asked again [s]. */
function retryAfter(tries: readonly SourceTry[], now: Instant): number {
  const waits = tries.map(({ problem }) =>
    'until' in problem ? Math.ceil((problem.until - now) / 1000) : RETRY_DEFAULT_S,
  );
  return Math.min(Math.max(Math.min(...waits, RETRY_MOST_S), RETRY_LEAST_S), RETRY_MOST_S);
}
