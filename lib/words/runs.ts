import type { Plan, RunPlan } from '@/lib/plan/types';
import type { ClockZone } from '@/lib/time/zone';
import { isolated } from './isolated';
import { listing } from './listing';
import type { Clock } from './times';

/** The name of a run of the plan, counted in the plan's own order. */
export function runName(plan: Plan, run: number): string {
  const name = plan.sortedRuns[run]?.name;
  return name === undefined ? `run ${run + 1}` : isolated(name);
}

/** "Round 5 and Round 6"; a longer unbroken row as "Round 5 to 9", or where no number tells them apart "Heat to Final". */
export function runNames(plan: Plan, runs: readonly number[]): string {
  const [first, last] = [runs[0], runs[runs.length - 1]];
  if (first === undefined || last === undefined) return '';
  if (runs.length > 2 && last - first === runs.length - 1)
    return `${runName(plan, first)} to ${lastOf(runName(plan, first), runName(plan, last))}`;
  return listing(runs.map((run) => runName(plan, run)));
}

/** The last of a row: where it is called as the first, its number alone. */
function lastOf(first: string, last: string): string {
  const [a, b] = [first, last].map((name) => /^(.*\S) (\d+)$/.exec(name));
  return a?.[1] !== undefined && a[1] === b?.[1] ? b[2]! : last;
}

/** The clock of a plan's event: bare times are understood from its first run on. */
export function planClock(plan: Plan, zone: ClockZone): Clock {
  const from = plan.sortedRuns[0]?.start;
  return from === undefined ? { zone } : { zone, from };
}

export function plannedRuns(plan: Plan): readonly RunPlan[] {
  return plan.runs.filter((run) => run.state === 'planned');
}
