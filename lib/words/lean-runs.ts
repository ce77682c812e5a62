import type { BySwapCount, Plan, RunPlan } from '@/lib/plan/types';
import { plannedRuns } from './runs';
import { sameJets, sameSetting } from './settings';

/** The entry of the plan's own settings among the best for each number of swaps; null where it is none of them. */
export function chosenCount(plan: Plan): BySwapCount | null {
  const chosen = plan.bySwapCount.find((entry) =>
    plan.runs.every(({ setting }, i) => {
      const other = entry.settings[i];
      return other !== undefined && sameSetting(setting, other);
    }),
  );
  const jetSwaps = plan.swaps.filter((swap) => !sameJets(swap.from, swap.to)).length;
  return chosen ?? plan.bySwapCount.find((entry) => entry.swaps === jetSwaps) ?? null;
}

/** The runs to come that stay over the accepted chance of lean, in order. */
export function leanRuns(plan: Plan): readonly RunPlan[] {
  const warned = new Set(
    plan.warnings.flatMap((warning) => (warning.code === 'no-jet-rich-enough' ? [warning.run] : [])),
  );
  // The runs over the limit are those with the highest chance: the limit is one for all of them.
  const likeliest = plannedRuns(plan)
    .filter(({ run, chanceOfLean }) => !warned.has(run) && chanceOfLean > 0)
    .sort((a, b) => b.chanceOfLean - a.chanceOfLean)
    .slice(0, Math.max(0, (chosenCount(plan)?.leanRunsOverRisk ?? 0) - warned.size));
  return plannedRuns(plan).filter((run) => warned.has(run.run) || likeliest.includes(run));
}
