import { fail, type Result } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import type { Metre } from '@/lib/units/quantity';
import { siteKey } from './copy';
import { lookUp } from './lookup';
import { requestElevations } from './open-meteo/elevations';
import type { Coordinates, Site } from './place';
import type { LookupProblem } from './problem';
import { readSite } from './read-site';
import type { WeatherDeps } from './weather-deps';

const ELEVATION_FRESH_MS = 365 * 24 * HOUR_MS;

/** Heights of the ground at up to a hundred points, in their order. */
export async function getElevations(
  places: readonly Coordinates[],
  deps: WeatherDeps,
): Promise<Result<readonly Metre[], LookupProblem>> {
  const sites: Site[] = [];
  for (const place of places) {
    const site = readSite({ ...place, elevation: null });
    if (!site.ok) return fail(site.reason);
    sites.push(site.value);
  }
  const question = {
    key: sites.map(siteKey).join(';'),
    freshMs: ELEVATION_FRESH_MS,
    ask: (deadline: AbortSignal) => requestElevations(sites, deadline, deps),
  };
  return lookUp(deps.memory.elevations, question, deps);
}
