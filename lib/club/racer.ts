import type { Machine } from '@/lib/carb/machine';
import type { Plan, PlanProblem, PlanRequest } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';

/** One racer of the club: a machine with its runs and what is known of it tonight. */
export type ClubRacer = Pick<
  PlanRequest,
  'machine' | 'runs' | 'fitted' | 'fittings' | 'made' | 'accepted' | 'outFrom'
> & {
  readonly id: string;
  readonly name: string;
  /** Racers with the same one take their jets from the same box. */
  readonly boxId: string;
};

/** What is the same for everybody at the event. */
export type ClubNight = Pick<PlanRequest, 'series' | 'readings' | 'now' | 'options' | 'placeOffset'>;

/** A racer with a plan, and what is true of the machine now by it. */
export type PlannedRacer = {
  readonly racer: ClubRacer;
  readonly plan: Plan;
  readonly standing: Standing;
};

/** A racer who cannot be planned, and why. */
export type UnplannedRacer = { readonly racer: ClubRacer; readonly problem: PlanProblem };

/** Jets are the same piece only where their numbers mean the same. */
export function markingKey({ marking }: Machine): string {
  return marking.kind === 'list' ? JSON.stringify(marking.jets) : marking.kind;
}
