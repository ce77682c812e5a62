import type { Air } from '@/lib/air/air';
import { drifts } from '@/lib/carb/drift';
import type { Machine, Setting } from '@/lib/carb/machine';
import { logSizeStep } from '@/lib/carb/size-step';
import type { DriftState, Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { airBetween } from './air-between';
import { nextRun } from './next-act';

/** How a setting stands in given air. */
export type Standing = {
  readonly state: DriftState;
  /** Drift of the carburettor that stands furthest out on the side of `state`; the leanest where it is right. */
  readonly drift: Ratio;
  /** The same in jet sizes. */
  readonly sizes: number;
};

export function standingIn(machine: Machine, setting: Setting, air: Air): Standing {
  const all = drifts(machine, setting, air);
  const leanest = Math.min(...all);
  const richest = Math.max(...all);
  const { lean, rich } = machine.limits;
  const state = leanest < -lean ? 'lean' : richest > rich ? 'rich' : 'right';
  const drift = ratio(state === 'rich' ? richest : leanest);
  const main = setting.mains[all.indexOf(drift)] ?? setting.mains[0]!;
  return { state, drift, sizes: Math.log1p(drift) / logSizeStep(machine, main) };
}

/** How what is fitted stands: now, or, while now lies outside the hours, at the start of the next run. */
export type FittedStanding = Standing & { readonly at: Instant; readonly run: number | null };

type StandingRequest = {
  readonly machine: Machine;
  readonly fitted: Setting;
  readonly plan: Plan;
  readonly now: Instant;
};

export function fittedStanding({ machine, fitted, plan, now }: StandingRequest): FittedStanding | null {
  const air = airBetween(plan.hours, now);
  if (air !== null) return { ...standingIn(machine, fitted, air), at: now, run: null };
  const run = nextRun(plan);
  const start = run === null ? undefined : plan.sortedRuns[run.run]?.start;
  if (run === null || start === undefined) return null;
  return { ...standingIn(machine, fitted, run.air), at: start, run: run.run };
}
