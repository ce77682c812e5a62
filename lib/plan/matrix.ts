import { jetArea } from '@/lib/carb/jets';
import type { Machine } from '@/lib/carb/machine';
import { ratio } from '@/lib/units/quantity';
import type { Candidate } from './candidates';
import { type Choice, inUnits, LEAN_UNIT, LOSS_UNIT, STEP_UNIT } from './choice';
import { type Grade, gradeOf } from './grade';
import { TOO_RICH_SHARE, TURN_WORTH } from './judgement';
import type { RunOdds } from './run-odds';
import type { Situation } from './situation';
import type { PlanOptions, Run } from './types';

/** Every candidate graded in every open run, at [run * candidates + candidate]. */
export type Grades = readonly Grade[];

export function gradeAll(
  machine: Machine,
  odds: readonly RunOdds[],
  candidates: readonly Candidate[],
): Grades {
  return odds.flatMap((run) => candidates.map((candidate) => gradeOf(run, candidate, machine)));
}

/**
 * Lean risk above its limit, with how much fuel is lacking, so that where no jet is rich enough the richest is the
 * least bad. Nothing where the limit is kept.
 */
export function leanOver(grade: Grade, risk: number): number {
  return grade.chanceOfLean > risk ? grade.chanceOfLean - risk + grade.lack : 0;
}

export function isTooRich(grade: Grade): boolean {
  return grade.chanceOfRich > TOO_RICH_SHARE;
}

/** Size of the step between two jet sets: mean over the carburettors of the log area ratio. */
function stepsBetween(machine: Machine, candidates: readonly Candidate[]): Float64Array {
  const sets = candidates.filter(({ group }, i) => group !== candidates[i - 1]?.group);
  const areas = sets.map(({ setting }) => {
    const logs = setting.mains.map((main) => Math.log(jetArea(machine.marking, main)));
    return logs.reduce((sum, log) => sum + log, 0) / logs.length;
  });
  return Float64Array.from(
    areas.flatMap((from) => areas.map((to) => inUnits(Math.abs(to - from), STEP_UNIT))),
  );
}

/** The most a swap or a run's power can count, so that sums of whole units stay exact. */
const MOST_WORTH = 10;
const MOST_WEIGHT = 100;

export function choiceOf(given: {
  readonly machine: Machine;
  readonly candidates: readonly Candidate[];
  readonly grades: Grades;
  readonly runs: readonly Run[];
  readonly situation: Situation;
  readonly start: number;
  readonly options: PlanOptions;
}): Choice {
  const { machine, candidates, grades, runs, situation, start, options } = given;
  const weightOf = (i: number) => Math.min(runs[Math.floor(i / candidates.length)]!.weight, MOST_WEIGHT);
  return {
    runs: runs.length,
    candidates: candidates.length,
    group: candidates.map(({ group }) => group),
    lean: Float64Array.from(grades, (grade) => inUnits(leanOver(grade, machine.limits.risk), LEAN_UNIT)),
    rich: Float64Array.from(grades, (grade) => (isTooRich(grade) ? 1 : 0)),
    loss: Float64Array.from(grades, (grade, i) => inUnits(grade.loss * weightOf(i), LOSS_UNIT)),
    gaps: situation.gaps.map(({ fits }) => fits),
    steps: stepsBetween(machine, candidates),
    start,
    swapCost: inUnits(Math.min(Math.max(options.worthIt, 0), MOST_WORTH), LOSS_UNIT),
    turnCost: inUnits(ratio(TURN_WORTH), LOSS_UNIT),
  };
}
