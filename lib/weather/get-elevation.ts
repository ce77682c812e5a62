import { fail, type Result } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import type { Metre } from '@/lib/units/quantity';
import { siteKey } from './copy';
import { lookUp } from './lookup';
import { requestElevation } from './open-meteo/elevation';
import type { Coordinates } from './place';
import type { LookupProblem } from './problem';
import { readSite } from './read-site';
import type { WeatherDeps } from './weather-deps';

const ELEVATION_FRESH_MS = 365 * 24 * HOUR_MS;

/** Height of the ground at a point. */
export async function getElevation(
  place: Coordinates,
  deps: WeatherDeps,
): Promise<Result<Metre, LookupProblem>> {
  const site = readSite({ ...place, elevation: null });
  if (!site.ok) return fail(site.reason);
  const question = {
    key: siteKey(site.value),
    freshMs: ELEVATION_FRESH_MS,
    ask: (deadline: AbortSignal) => requestElevation(site.value, deadline, deps),
  };
  return lookUp(deps.memory.elevations, question, deps);
}
