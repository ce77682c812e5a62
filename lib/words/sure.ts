import type { Plan } from '@/lib/plan/types';
import { forecastCount } from './counts';
import { plannedRuns, runName } from './runs';

/** How sure the plan is, by its worst run to come: "Lean in 3 of 64 forecasts at worst (Round 6)." */
export function howSure(plan: Plan): string {
  const [first, ...rest] = plannedRuns(plan);
  if (first === undefined) return 'No run to come.';
  const worst = rest.reduce((a, b) => (b.leanCount.lean > a.leanCount.lean ? b : a), first);
  if (worst.leanCount.lean === 0) return `Lean in ${forecastCount(worst.leanCount)}.`;
  return `Lean in ${forecastCount(worst.leanCount)} at worst (${runName(plan, worst.run)}).`;
}
