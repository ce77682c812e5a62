import type { Air } from '@/lib/air/air';
import { drifts } from '@/lib/carb/drift';
import type { Machine, Setting } from '@/lib/carb/machine';
import { logSizeStep } from '@/lib/carb/size-step';
import type { DriftState, Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { airBetween } from './air-between';

/** How a setting stands in given air. */
export type Mixture = {
  readonly state: DriftState;
  /** Drift of the carburettor that stands furthest out on the side of `state`; the leanest where it is right. */
  readonly drift: Ratio;
  /** The same in jet sizes. */
  readonly sizes: number;
};

export function mixtureIn(machine: Machine, setting: Setting, air: Air): Mixture {
  const all = drifts(machine, setting, air);
  const leanest = Math.min(...all);
  const richest = Math.max(...all);
  const { lean, rich } = machine.limits;
  const state = leanest < -lean ? 'lean' : richest > rich ? 'rich' : 'right';
  const drift = ratio(state === 'rich' ? richest : leanest);
  const main = setting.mains[all.indexOf(drift)] ?? setting.mains[0]!;
  return { state, drift, sizes: Math.log1p(drift) / logSizeStep(machine, main) };
}

/** How what is in stands: now, or, while now lies outside the hours, at the start of the next run. */
export type MixtureNow = Mixture & { readonly at: Instant; readonly run: number | null };

/** The mixture, and the air it is judged in. */
export type JudgedNow = { readonly mixture: MixtureNow; readonly air: Air };

export function mixtureNow(machine: Machine, plan: Plan, now: Instant): JudgedNow | null {
  const { setting } = plan.inNow;
  const air = airBetween(plan.hours, now);
  if (air !== null) return { mixture: { ...mixtureIn(machine, setting, air), at: now, run: null }, air };
  const run = plan.runs.find(({ state }) => state === 'planned');
  const start = run === undefined ? undefined : plan.sortedRuns[run.run]?.start;
  if (run === undefined || start === undefined) return null;
  return { mixture: { ...mixtureIn(machine, setting, run.air), at: start, run: run.run }, air: run.air };
}
