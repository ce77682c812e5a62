import type { Setting } from '@/lib/carb/machine';
import { timeAtPower } from '@/lib/power/relative-power';
import { ratio, second } from '@/lib/units/quantity';
import type { Candidate } from './candidates';
import { type Choice, type Cost, LOSS_UNIT, leanOfHarm, richOfHarm } from './choice';
import type { Grades } from './matrix';
import { bestBySwaps, bestOtherFirstAct, type Solution } from './optimise';
import { settingsByRun } from './run-plans';
import type { Situation } from './situation';
import type { BySwapCount, Plan, Run } from './types';

export type Alternatives = {
  readonly choice: Choice;
  readonly candidates: readonly Candidate[];
  readonly grades: Grades;
  /** Open runs. */
  readonly runs: readonly Run[];
  readonly situation: Situation;
};

/** Settings of all sorted runs where the open ones follow a path of candidates. */
function settingsOf({ candidates, situation }: Alternatives, path: readonly number[]): readonly Setting[] {
  const open = situation.open.map((run, i) => ({ run, setting: candidates[path[i]!]!.setting }));
  return settingsByRun(situation, open);
}

/**
 * Seconds lost against the ideal mixture over the timed runs, through speed in proportion to the third root of power.
 * null where no run is timed.
 */
function secondsLost(runs: readonly Run[], losses: readonly number[]): number | null {
  const timed = runs.flatMap(({ typicalSeconds }, i) =>
    typicalSeconds === null
      ? []
      : [timeAtPower(second(typicalSeconds), ratio(1 - losses[i]!)) - typicalSeconds],
  );
  return timed.length === 0 ? null : timed.reduce((sum, each) => sum + each, 0);
}

/** The best plan for each number of jet swaps that buys something over fewer. */
export function bySwapCount(given: Alternatives): readonly BySwapCount[] {
  const { choice, grades, runs } = given;
  if (runs.length === 0) return [];
  const weight = runs.reduce((sum, run) => sum + run.weight, 0);
  return bestBySwaps(choice).map(({ plan, swaps }) => {
    const indexes = plan.map((candidate, run) => run * choice.candidates + candidate);
    const losses = indexes.map((i) => grades[i]!.loss);
    const weighted = losses.reduce((sum, loss, run) => sum + loss * runs[run]!.weight, 0);
    return {
      swaps,
      settings: settingsOf(given, plan),
      leanRunsOverRisk: indexes.filter((i) => choice.lean[i]! > 0).length,
      richRuns: indexes.filter((i) => choice.rich[i]! > 0).length,
      loss: ratio(weight === 0 ? 0 : weighted / weight),
      secondsLost: secondsLost(runs, losses),
    };
  });
}

/** The best plan with another first act that keeps the limits no worse. */
export function runnerUp(
  given: Alternatives,
  chosen: { readonly solution: Solution; readonly plan: readonly number[]; readonly cost: Cost },
): Plan['runnerUp'] {
  if (given.runs.length === 0) return null;
  const other = bestOtherFirstAct(given.choice, { ...chosen.solution, plan: chosen.plan });
  if (other === null) return null;
  const worse =
    leanOfHarm(other.cost.harm) > leanOfHarm(chosen.cost.harm) ||
    richOfHarm(other.cost.harm) > richOfHarm(chosen.cost.harm);
  if (worse) return null;
  return {
    settings: settingsOf(given, other.plan),
    margin: ratio((other.cost.cost - chosen.cost.cost) * LOSS_UNIT),
  };
}
