import { jetArea } from '@/lib/carb/jets';
import type { Machine } from '@/lib/carb/machine';
import type { Candidate } from './candidates';
import { type Choice, inUnits, LEAN_UNIT, LOSS_UNIT, STEP_UNIT } from './choice';
import { isTooRich, type Judge, leanOver, lossOf } from './grade';
import { TURN_WORTH } from './judgement';
import type { RunOdds } from './run-odds';
import type { Situation } from './situation';
import type { PlanOptions, Run } from './types';

/** Size of the step between two jet sets: mean over the carburettors of the log area ratio. */
function stepsBetween(machine: Machine, candidates: readonly Candidate[]): Float64Array {
  const sets = candidates.filter(({ group }, i) => group !== candidates[i - 1]?.group);
  const areas = sets.map(({ setting }) => {
    const logs = setting.mains.map((main) => Math.log(jetArea(machine.marking, main)));
    return logs.reduce((sum, log) => sum + log, 0) / logs.length;
  });
  const steps = new Float64Array(areas.length ** 2);
  for (const [i, from] of areas.entries())
    for (const [j, to] of areas.entries())
      steps[i * areas.length + j] = inUnits(Math.abs(to - from), STEP_UNIT);
  return steps;
}

/** The most a swap or a run's power can count, so that sums of whole units stay exact. */
const MOST_WORTH = 10;
const MOST_WEIGHT = 100;

export type ChoiceRequest = {
  readonly machine: Machine;
  readonly judge: Judge;
  readonly candidates: readonly Candidate[];
  /** Of the open runs, as their timed runs and gaps are. */
  readonly odds: readonly RunOdds[];
  readonly runs: readonly Run[];
  readonly situation: Situation;
  readonly start: number;
  readonly options: PlanOptions;
};

/** Grades every candidate in every open run. */
export function choiceOf(request: ChoiceRequest): Choice {
  const { machine, judge, candidates, odds, runs, situation, start, options } = request;
  const size = runs.length * candidates.length;
  const [lean, rich, loss] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  for (const [run, { weight }] of runs.entries()) {
    const each = odds[run]!;
    for (const [c, candidate] of candidates.entries()) {
      const i = run * candidates.length + c;
      lean[i] = inUnits(leanOver(each, candidate, judge), LEAN_UNIT);
      rich[i] = isTooRich(each, candidate, judge) ? 1 : 0;
      loss[i] = inUnits(lossOf(each, candidate, judge) * Math.min(weight, MOST_WEIGHT), LOSS_UNIT);
    }
  }
  return {
    runs: runs.length,
    candidates: candidates.length,
    group: candidates.map(({ group }) => group),
    lean,
    rich,
    loss,
    gaps: situation.gaps.map(({ fits }) => fits),
    steps: stepsBetween(machine, candidates),
    start,
    swapCost: inUnits(Math.min(Math.max(options.worthIt, 0), MOST_WORTH), LOSS_UNIT),
    turnCost: inUnits(TURN_WORTH, LOSS_UNIT),
  };
}
