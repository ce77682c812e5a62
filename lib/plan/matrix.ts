import { jetArea } from '@/lib/carb/jets';
import type { Machine } from '@/lib/carb/machine';
import { swapWorth } from '@/lib/carb/swap-worth';
import { type Ratio, ratio } from '@/lib/units/quantity';
import type { Candidate } from './candidates';
import { inUnits, LEAN_UNIT, LOSS_UNIT, type RunChoice, STEP_UNIT } from './choice';
import { isDrowned, isTooRich, type Judge, leanOver } from './grade';
import { THERE_AND_BACK, TURN_WORTH } from './judgement';
import { firstFrom, risingBy } from './rising';
import { meanLoss, type RunOdds } from './run-odds';
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
  for (let i = 0; i < areas.length; i++)
    for (let j = 0; j < areas.length; j++)
      steps[i * areas.length + j] = inUnits(Math.abs(areas[j]! - areas[i]!), STEP_UNIT);
  return steps;
}

/** The most a swap or a run's power can count, so that sums of whole units stay exact. */
const MOST_WORTH = 10;
const MOST_WEIGHT = 100;

/** A setting that does not run is no way out of a lean one: it counts above any lean risk, which is at most near 1. */
const DROWNED = 3;

/** What counts of every candidate in every open run, at [run * candidates + candidate]. */
function gradesOf({
  judge,
  candidates,
  odds,
  runs,
}: ChoiceRequest): Pick<RunChoice, 'lean' | 'rich' | 'loss'> {
  const count = candidates.length;
  const size = runs.length * count;
  const grades = {
    lean: new Float64Array(size),
    rich: new Float64Array(size),
    loss: new Float64Array(size),
  };
  const [leanestFirst, richestLast] = [risingBy(candidates, 'leanest'), risingBy(candidates, 'richest')];
  const deliveries = deliveriesOf(candidates);
  const losses = new Float64Array(deliveries.values.length);
  for (const [run, { weight }] of runs.entries()) {
    const each = odds[run]!;
    const safe = firstFrom(count, (i) => leanOver(each, candidates[leanestFirst[i]!]!, judge) === 0);
    for (let i = 0; i < safe; i++) {
      const c = leanestFirst[i]!;
      grades.lean[run * count + c] = inUnits(leanOver(each, candidates[c]!, judge), LEAN_UNIT);
    }
    const tooRich = firstFrom(count, (i) => isTooRich(each, candidates[richestLast[i]!]!, judge));
    for (let i = tooRich; i < count; i++) grades.rich[run * count + richestLast[i]!] = 1;
    for (let i = 0; i < losses.length; i++)
      losses[i] = meanLoss(each, deliveries.values[i]!, judge.richPowerLoss);
    for (let c = 0; c < count; c++) {
      const loss = deliveries.mean(losses, c);
      grades.loss[run * count + c] = inUnits(loss * Math.min(weight, MOST_WEIGHT), LOSS_UNIT);
      if (isDrowned(loss)) grades.lean[run * count + c] = inUnits(DROWNED, LEAN_UNIT);
    }
  }
  return grades;
}

/**
 * What the carburettors are given, each amount once: carburettors on one baseline share theirs, and so do the many sets
 * of a large box.
 */
function deliveriesOf(candidates: readonly Candidate[]) {
  const places = new Map<number, number>();
  const at = candidates.map(({ delivered }) =>
    delivered.map((amount) => {
      const place = places.get(amount) ?? places.size;
      places.set(amount, place);
      return place;
    }),
  );
  return {
    values: Float64Array.from(places.keys()),
    /** Mean over a candidate's carburettors of a number known for every amount. */
    mean(known: Float64Array, candidate: number): number {
      let sum = 0;
      for (const place of at[candidate]!) sum += known[place]!;
      return sum / at[candidate]!.length;
    },
  };
}

/**
 * Power a swap must save to be made: as asked for this once, or what the machine says. Where a
 * thermometer is read, the next reading may ask for the swap back.
 */
export function worthOf(
  machine: Machine,
  { worthIt }: Pick<PlanOptions, 'worthIt'>,
  { reads }: Pick<Situation, 'reads'>,
): Ratio {
  const worth = worthIt ?? swapWorth(machine) * (reads ? THERE_AND_BACK : 1);
  return ratio(Math.min(Math.max(worth, 0), MOST_WORTH));
}

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
export function choiceOf(request: ChoiceRequest): RunChoice {
  const { machine, candidates, runs, situation, start, options } = request;
  return {
    runs: runs.length,
    candidates: candidates.length,
    group: candidates.map(({ group }) => group),
    ...gradesOf(request),
    gaps: situation.gaps.map(({ fits }) => fits),
    steps: stepsBetween(machine, candidates),
    start,
    swapCost: inUnits(worthOf(machine, options, situation), LOSS_UNIT),
    turnCost: inUnits(TURN_WORTH, LOSS_UNIT),
  };
}
