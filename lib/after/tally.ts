import type { Setting } from '@/lib/carb/machine';
import { makePlan } from '@/lib/plan/make-plan';
import type { Plan, PlanProblem, PlanRequest } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import { ratio } from '@/lib/units/quantity';
import type { Tally } from './review';

/** Which sorted runs count: those the hours reach and the machine was in. */
export type Counted = readonly boolean[];

/**
 * A night had it been made on these settings, by all that is known.
 *
 * @param settings by the request's runs as given
 */
export function tallyOf(
  request: PlanRequest,
  settings: readonly Setting[],
  counted: Counted,
): Result<Tally, PlanProblem> {
  const made = settings.map((setting, run) => ({ run, setting }));
  const plan = makePlan({ ...request, made, accepted: null });
  return plan.ok ? ok(tallyOfPlan(plan.value, counted)) : plan;
}

/** The same of a plan whose runs are all over. */
export function tallyOfPlan(plan: Plan, counted: Counted): Tally {
  const runs = plan.runs.filter(({ run }) => counted[run] === true);
  const weightOf = (run: number): number => plan.sortedRuns[run]?.weight ?? 1;
  const weight = runs.reduce((sum, { run }) => sum + weightOf(run), 0);
  const lost = runs.reduce((sum, { run, loss }) => sum + weightOf(run) * loss, 0);
  const stints = runs.flatMap(({ run, setting }, i) =>
    i > 0 && sameMains(runs[i - 1]!.setting, setting) ? [] : [{ setting, firstRun: run }],
  );
  return {
    swaps: Math.max(0, stints.length - 1),
    lean: runs.flatMap(({ run, grade }) => (grade === 'lean' ? [run] : [])),
    rich: runs.flatMap(({ run, grade }) => (grade === 'rich' || grade === 'drowned' ? [run] : [])),
    loss: ratio(weight === 0 ? 0 : lost / weight),
    stints,
  };
}

function sameMains(a: Setting, b: Setting): boolean {
  return a.mains.length === b.mains.length && a.mains.every((main, i) => main === b.mains[i]);
}
