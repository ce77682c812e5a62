import type { Swap } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { PlannedRacer } from './racer';

/** One change of jets or trim, of one racer. */
export type ClubAct = {
  readonly racerId: string;
  /** When the hands are needed: from then on; before a racer's first run, until then. */
  readonly at: Instant;
  readonly swap: Swap;
  /** Nothing runs before it, so only its end is a moment. */
  readonly beforeFirst: boolean;
};

/** Whether a swap comes before every run of its plan. */
function isBeforeFirst({ beforeRun }: Pick<Swap, 'beforeRun'>): boolean {
  return beforeRun === 0;
}

/** The moment a swap is told by: the start of its gap, or the latest start where no run comes before it. */
export function actMoment(swap: Swap): Instant {
  return isBeforeFirst(swap) ? swap.latestStart : swap.windowStart;
}

/** Everything to be done tonight in the order of time; what comes at once goes by its end, then by the roster. */
export function actsByTime(planned: readonly PlannedRacer[]): readonly ClubAct[] {
  const acts = planned.flatMap(({ racer, plan }, place) =>
    plan.swaps.map((swap) => ({
      place,
      act: { racerId: racer.id, at: actMoment(swap), swap, beforeFirst: isBeforeFirst(swap) },
    })),
  );
  return acts
    .sort(
      (a, b) => a.act.at - b.act.at || a.act.swap.latestStart - b.act.swap.latestStart || a.place - b.place,
    )
    .map(({ act }) => act);
}
