import type { Setting } from '@/lib/carb/machine';
import type { Instant } from '@/lib/time/instant';
import type { PreparedNight } from './night';
import type { Situation } from './situation';
import type { Swap } from './types';

/** What is in the engine from an instant on. */
type Fitting = { readonly from: number; readonly setting: Setting };

/**
 * What the plan has in the engine at any instant. A swap counts from its latest start: until then the old setting may
 * still be in. Before the first run it is what that run or the engine has now.
 */
export function timeline(
  night: PreparedNight,
  { done, fitted }: Situation,
  plan: { readonly settings: readonly Setting[]; readonly swaps: readonly Swap[] },
): (at: Instant) => Setting {
  const swaps = new Map(plan.swaps.map((swap) => [swap.beforeRun, swap]));
  const fittings = plan.settings.map((setting, run): Fitting => {
    const swap = swaps.get(run);
    return { from: swap?.latestStart ?? night.sortedRuns[run]!.start, setting };
  });
  const before = done[0]?.setting ?? fitted;
  return (at) => {
    let last = fittings.length - 1;
    while (last >= 0 && fittings[last]!.from > at) last -= 1;
    return fittings[last]?.setting ?? before;
  };
}
