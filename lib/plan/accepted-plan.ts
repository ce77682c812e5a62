import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import type { ComparedPlan, SwapAct } from '@/lib/plan/compared';
import type { Plan, Run } from '@/lib/plan/types';
import { type Instant, instant } from '@/lib/time/instant';

/** A plan known by its settings alone, as a link carries it. All by sorted run. */
export type AcceptedPlan = {
  readonly sortedRuns: readonly Run[];
  readonly settings: readonly Setting[];
  readonly swaps: readonly SwapAct[];
};

/** The swaps that settings imply, from what is fitted before the first run on. */
export function acceptedPlan(
  sortedRuns: readonly Run[],
  settings: readonly Setting[],
  fitted: Setting,
): AcceptedPlan {
  const swaps = settings.flatMap((to, beforeRun): SwapAct[] => {
    const from = settings[beforeRun - 1] ?? fitted;
    if (sameSetting(from, to)) return [];
    return [{ beforeRun, from, to, windowStart: freeFrom(sortedRuns, beforeRun) }];
  });
  return { sortedRuns, settings, swaps };
}

/** The end of the runs before a run, not after its start; its start where there is none before. */
export function freeFrom(sortedRuns: readonly Run[], run: number): Instant {
  const start = sortedRuns[run]!.start;
  const ends = sortedRuns.slice(0, run).map(({ end }) => end);
  return ends.length === 0 ? start : instant(Math.min(start, Math.max(...ends)));
}

/** The accepted plan as one to compare with; its airs are those of the plan it was made with, where that is known. */
export function comparedAccepted(
  { sortedRuns, settings, swaps }: AcceptedPlan,
  airs: Pick<Plan, 'runs'>,
): ComparedPlan {
  return {
    sortedRuns,
    swaps,
    runs: airs.runs.map(({ run, air }) => ({ run, air, setting: settings[run]!, state: 'planned' })),
  };
}
