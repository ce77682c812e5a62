import type { Setting } from '@/lib/carb/machine';
import type { Plan, RunPlan, Swap } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';

/** The one thing to do next. */
export type NextAct =
  | {
      readonly kind: 'swap';
      readonly swap: Swap;
      /** Before its window, within it, or past the latest start that still makes the run. */
      readonly time: 'ahead' | 'open' | 'late';
    }
  /** Nothing to fit: these jets hold through the last run planned. */
  | { readonly kind: 'hold'; readonly setting: Setting; readonly lastRun: number }
  | { readonly kind: 'over' };

/** The next run the engine will work. */
export function nextRun(plan: Plan): RunPlan | null {
  return plan.runs.find(({ state }) => state === 'planned') ?? null;
}

export function nextAct(plan: Plan, now: Instant): NextAct {
  const run = nextRun(plan);
  if (run === null) return { kind: 'over' };
  const swap = plan.swaps.find(({ beforeRun }) => beforeRun >= run.run);
  if (swap !== undefined) return { kind: 'swap', swap, time: swapTime(swap, now) };
  const last = plan.runs.filter(({ state }) => state === 'planned').at(-1) ?? run;
  return { kind: 'hold', setting: run.setting, lastRun: last.run };
}

function swapTime({ windowStart, latestStart }: Swap, now: Instant): 'ahead' | 'open' | 'late' {
  if (now < windowStart) return 'ahead';
  return now <= latestStart ? 'open' : 'late';
}
