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

/** "Round 5 and Round 6"; a longer unbroken row as "Rounds 5 to 9", or where no number tells them apart "Heat to Final". */
export function runNames(plan: Plan, runs: readonly number[]): string {
  const [first, last] = [runs[0], runs[runs.length - 1]];
  if (first === undefined || last === undefined) return '';
  if (runs.length > 2 && last - first === runs.length - 1)
    return rowOf(runName(plan, first), runName(plan, last));
  return listing(runs.map((run) => runName(plan, run)));
}

/** A row from its first to its last: where both are called alike, what they are called stands once. */
function rowOf(first: string, last: string): string {
  const [a, b] = [first, last].map((name) => /^(.*\S) (\d+)$/.exec(name));
  if (a?.[1] === undefined || a[1] !== b?.[1]) return `${first} to ${last}`;
  return `${manyOf(a[1])} ${a[2]} to ${b[2]}`;
}

/** What runs are called, of more than one. A word of a person's own stays as it is: nobody knows its plural. */
function manyOf(name: string): string {
  const many = MANY.find(([one]) => name === one || name.endsWith(` ${one}`));
  return many === undefined ? name : `${name.slice(0, -many[0].length)}${many[1]}`;
}

const MANY = [
  ...['Round', 'Heat', 'Run', 'Race', 'Leg', 'Lap', 'Stage', 'Qualifier'].flatMap((one) =>
    [one, one.toLowerCase()].map((word) => [word, `${word}s`] as const),
  ),
  ['Pass', 'Passes'],
  ['pass', 'passes'],
] as const;

/** The clock of a plan's event: bare times are understood from its first run on. */
export function planClock(plan: Plan, zone: ClockZone): Clock {
  const from = plan.sortedRuns[0]?.start;
  return from === undefined ? { zone } : { zone, from };
}

export function plannedRuns(plan: Plan): readonly RunPlan[] {
  return plan.runs.filter((run) => run.state === 'planned');
}
