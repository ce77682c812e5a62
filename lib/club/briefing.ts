import { nightPlanner } from '@/lib/plan/make-plan';
import { standingOf } from '@/lib/standing/standing';
import { actsByTime, type ClubAct } from './acts';
import { type ClubBox, clubBoxes } from './boxes';
import { type Borrowing, borrowings } from './loans';
import type { ClubNight, ClubRacer, PlannedRacer, UnplannedRacer } from './racer';
import { clubRequests } from './requests';

/** Everything the club is told about the night. */
export type Briefing = {
  readonly planned: readonly PlannedRacer[];
  readonly unplanned: readonly UnplannedRacer[];
  readonly acts: readonly ClubAct[];
  readonly boxes: readonly ClubBox[];
  readonly borrowings: readonly Borrowing[];
};

/**
 * Plans the racers one after the other and puts the briefing together. Yields after each, so that a page can go on
 * answering its reader: the caller decides how many steps it takes at once.
 */
export function* briefingSteps(racers: readonly ClubRacer[], night: ClubNight): Generator<void, Briefing> {
  const planner = nightPlanner();
  const requests = clubRequests(racers, night);
  const planned: PlannedRacer[] = [];
  const unplanned: UnplannedRacer[] = [];
  for (const [i, racer] of racers.entries()) {
    const request = requests[i]!;
    const plan = planner(request);
    if (plan.ok) planned.push({ racer, plan: plan.value, standing: standingOf(request, plan.value) });
    else unplanned.push({ racer, problem: plan.reason });
    yield;
  }
  const requestOf = new Map(racers.map((racer, i) => [racer.id, requests[i]!]));
  const boxes = clubBoxes(planned);
  const lent = yield* borrowings(planned, boxes, ({ id, machine }, box) =>
    planner({ ...requestOf.get(id)!, machine: { ...machine, box } }),
  );
  return { planned, unplanned, acts: actsByTime(planned), boxes, borrowings: lent };
}
