import { fail, ok, type Result } from '@/lib/result/result';
import { MINUTE_MS } from '@/lib/time/instant';
import { siteKey } from './copy';
import { lookUp } from './lookup';
import type { Coordinates } from './place';
import type { LookupProblem } from './problem';
import { readSite } from './read-site';
import { OLDEST_OBSERVATION_MS } from './stations/observation';
import type { Observed } from './stations/observed';
import type { WeatherDeps } from './weather-deps';
import { coversUnitedStates } from './weather-gov/area';
import { requestObservations } from './weather-gov/stations';

/** Stations report every hour or oftener; their service is a few minutes behind. */
const OBSERVATIONS_FRESH_MS = 5 * MINUTE_MS;

/** What weather stations around a place observed last; none of it is used for anything by itself. */
export async function getObservations(
  place: Coordinates,
  deps: WeatherDeps,
): Promise<Result<Observed, LookupProblem>> {
  const site = readSite({ ...place, elevation: null });
  if (!site.ok) return site;
  if (!coversUnitedStates(site.value)) return fail({ code: 'no-stations-here' });
  const question = {
    key: siteKey(site.value),
    freshMs: OBSERVATIONS_FRESH_MS,
    ask: (deadline: AbortSignal) => requestObservations({ site: site.value, deadline }, deps),
  };
  const observed = await lookUp(deps.memory.observations, question, deps);
  if (!observed.ok) return isOutside(observed.reason) ? fail({ code: 'no-stations-here' }) : observed;
  // Where the service did not answer, what it said before may come back: it has aged meanwhile.
  const { observations, leftOut } = observed.value;
  const young = observations.filter(({ at }) => deps.now() - at <= OLDEST_OBSERVATION_MS);
  const aged = observations.filter((each) => !young.includes(each));
  return ok({
    observations: young,
    leftOut: [...leftOut, ...aged.map(({ station }) => ({ station, code: 'too-old' as const }))],
  });
}

/** Beyond the border, at sea, or far from any station. */
function isOutside(problem: LookupProblem): boolean {
  return problem.code === 'lookup-failed' && ['outside-area', 'no-hours'].includes(problem.problem.code);
}
