import type { PlanRequest, Run } from '@/lib/plan/types';
import type { ClubNight, ClubRacer } from './racer';

/**
 * A planning request for every racer, in the order of the roster. Racers whose runs are alike get one and the same
 * list of them: the planner shares the weather of a night between requests that hand it the same list.
 */
export function clubRequests(racers: readonly ClubRacer[], night: ClubNight): readonly PlanRequest[] {
  const lists = new Map<string, readonly Run[]>();
  const sharedList = (runs: readonly Run[]): readonly Run[] => {
    const key = JSON.stringify(runs);
    const known = lists.get(key) ?? runs;
    lists.set(key, known);
    return known;
  };
  return racers.map(({ machine, runs, fitted, fittings, made, accepted, outFrom }) => ({
    ...night,
    machine,
    runs: sharedList(runs),
    fitted,
    ...(fittings === undefined ? {} : { fittings }),
    ...(outFrom === undefined ? {} : { outFrom }),
    made,
    accepted,
  }));
}
