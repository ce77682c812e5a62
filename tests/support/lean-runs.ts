import { logDelivered } from '@/lib/carb/drift';
import { makePlan } from '@/lib/plan/make-plan';
import type { Plan } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import { type OtherWorld, type SimulatedNight, simulatedNight } from './simulated-nights';

/** Whether a run turned lean at one of the instants the plan looks at: runs of ten minutes have their ends only. */
export function wasLean(night: SimulatedNight, plan: Plan, run: number): boolean {
  const { machine } = night.request;
  const { start, end } = plan.sortedRuns[run]!;
  const leanest = Math.min(...logDelivered(machine, plan.runs[run]!.setting));
  const threshold = leanest - Math.log(1 - machine.limits.lean);
  return night.truth.ideal.some((ideal, i) => {
    const at = night.truth.at[i]!;
    return (at === start || at === end) && ideal > threshold;
  });
}

/** A run as it was planned, and what became of it. */
export type RunOutcome = {
  readonly claimed: number;
  readonly lean: boolean;
  /** Forecast as the planner corrected it [K]. */
  readonly temperature: number;
  /** A reading was taken in the three hours before it. */
  readonly read: boolean;
};

/** How many seeded nights of a world went, run by run; only runs that the plan says keep the lean limit. */
export function outcomesOf(world: OtherWorld, seeds: { readonly from: number; readonly to: number }) {
  const outcomes: RunOutcome[] = [];
  for (let seed = seeds.from; seed <= seeds.to; seed++) {
    const night = simulatedNight(seed, world);
    const { machine, readings } = night.request;
    const plan = expectOk(makePlan(night.request));
    for (const { run, chanceOfLean, air } of plan.runs) {
      if (chanceOfLean > machine.limits.risk) continue;
      const { start } = plan.sortedRuns[run]!;
      outcomes.push({
        claimed: chanceOfLean,
        lean: wasLean(night, plan, run),
        temperature: air.temperature,
        read: readings.some(({ at }) => at <= start && start - at <= 3 * HOUR_MS),
      });
    }
  }
  return outcomes;
}

export type Tally = { readonly runs: number; readonly said: number; readonly were: number };

/** Of some outcomes: how many, the mean chance that was said, and the share that were lean. */
export function tallyOf(outcomes: readonly RunOutcome[], counts: (outcome: RunOutcome) => boolean): Tally {
  const counted = outcomes.filter(counts);
  return {
    runs: counted.length,
    said: counted.reduce((sum, { claimed }) => sum + claimed, 0) / counted.length,
    were: counted.filter(({ lean }) => lean).length / counted.length,
  };
}

/** The groups of runs that have to keep the limit each by itself. */
export const GROUPS = {
  'all runs': () => true,
  'runs said 3 to 5 %': ({ claimed }: RunOutcome) => claimed >= 0.03,
  'runs below -12 °C': ({ temperature }: RunOutcome) => temperature < 273.15 - 12,
  'runs below -12 °C with a reading': ({ temperature, read }: RunOutcome) =>
    read && temperature < 273.15 - 12,
} as const;
