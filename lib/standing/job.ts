import type { Setting } from '@/lib/carb/machine';
import type { Plan, RunPlan, Swap } from '@/lib/plan/types';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { isDangerous } from './danger';

/** The one thing to do next. */
export type Job =
  | {
      readonly kind: 'swap';
      readonly swap: Swap;
      /** Before its window, within it, or past the latest start that still makes the run. */
      readonly time: 'ahead' | 'open' | 'late';
      /** True near its window: only then is it asked whether it is done. */
      readonly canBeDone: boolean;
    }
  /** Nothing to put in, and every run to come keeps its limits. */
  | { readonly kind: 'hold'; readonly setting: Setting; readonly runs: readonly RunPlan[] }
  /** Nothing to put in helps: these runs are not to be raced on what there is. */
  | { readonly kind: 'do-not-race'; readonly setting: Setting; readonly runs: readonly RunPlan[] }
  /** Runs are to come, and the hours do not reach them. */
  | { readonly kind: 'no-hours'; readonly runs: readonly RunPlan[] }
  /** The machine is out; these runs go on without it. */
  | { readonly kind: 'out'; readonly runs: readonly RunPlan[] }
  | { readonly kind: 'over' };

/** A swap can be told as made from this long before its window on; it may well be done early. Judgement. */
const EARLY_MINUTES = 30;

export function jobOf(plan: Plan, now: Instant): Job {
  const planned = plan.runs.filter(({ state }) => state === 'planned');
  const [next] = planned;
  if (next === undefined) {
    const runs = plan.runs.filter(({ state, run }) => state === 'beyond-hours' && isToCome(plan, run, now));
    const out = plan.runs.filter(({ state }) => state === 'out');
    if (out.length > 0) return { kind: 'out', runs: out };
    return runs.length === 0 ? { kind: 'over' } : { kind: 'no-hours', runs };
  }
  const swap = plan.swaps.find(({ beforeRun }) => beforeRun >= next.run);
  if (swap !== undefined)
    return {
      kind: 'swap',
      swap,
      time: swapTime(swap, now),
      canBeDone: now >= addMinutes(swap.windowStart, -EARLY_MINUTES),
    };
  const bad = planned.filter(isDangerous);
  return bad.length === 0
    ? { kind: 'hold', setting: next.setting, runs: planned }
    : { kind: 'do-not-race', setting: next.setting, runs: bad };
}

function isToCome(plan: Plan, run: number, now: Instant): boolean {
  return (plan.sortedRuns[run]?.start ?? now) > now;
}

function swapTime({ windowStart, latestStart }: Swap, now: Instant): 'ahead' | 'open' | 'late' {
  if (now < windowStart) return 'ahead';
  return now <= latestStart ? 'open' : 'late';
}
