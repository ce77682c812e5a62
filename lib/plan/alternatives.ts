import type { Setting } from '@/lib/carb/machine';
import { timeAtPower } from '@/lib/power/relative-power';
import { ratio, second } from '@/lib/units/quantity';
import { LOSS_UNIT, leanOfHarm, richOfHarm } from './choice';
import type { Decision } from './decide';
import { isDrowned } from './grade';
import { MOST_SWAPS_LISTED } from './judgement';
import { bestBySwaps, bestOtherFirstAct, countSwaps } from './optimise';
import { settingsByRun } from './situation';
import type { BySwapCount, Plan, Run } from './types';
import type { View } from './view';

/** Settings of all sorted runs where the open ones follow a path of candidates. */
function settingsOf({ candidates, situation }: Decision, path: readonly number[]): readonly Setting[] {
  const open = situation.open.map((run, i) => ({ run, setting: candidates[path[i]!]!.setting }));
  return settingsByRun(situation, open);
}

/**
 * Seconds lost against the ideal mixture over the timed runs, through speed in proportion to the third root of power.
 * null where no run is timed, or where one is on a setting that does not run: it has no time.
 */
function secondsLost(runs: readonly Run[], losses: readonly number[]): number | null {
  const times = runs.flatMap(({ typicalSeconds }, i) =>
    typicalSeconds === null ? [] : [{ typicalSeconds, loss: losses[i]! }],
  );
  if (times.some(({ loss }) => isDrowned(loss))) return null;
  const timed = times.map(
    ({ typicalSeconds, loss }) => timeAtPower(second(typicalSeconds), ratio(1 - loss)) - typicalSeconds,
  );
  return timed.length === 0 ? null : timed.reduce((sum, each) => sum + each, 0);
}

/** The best plan for each number of jet swaps that buys something over fewer. */
export function bySwapCount(view: View, decision: Decision): readonly BySwapCount[] {
  const { choice, open, candidates, steady } = decision;
  if (open.length === 0) return [];
  const weight = open.reduce((sum, { timed }) => sum + timed.weight, 0);
  const most = Math.max(MOST_SWAPS_LISTED, countSwaps(choice, steady.plan));
  return bestBySwaps(choice, most).map(({ plan, swaps }) => {
    const indexes = plan.map((candidate, i) => i * choice.candidates + candidate);
    const losses = plan.map((candidate, i) => view.lossOf(open[i]!.run, candidates[candidate]!.setting));
    const weighted = losses.reduce((sum, loss, i) => sum + loss * open[i]!.timed.weight, 0);
    return {
      swaps,
      settings: settingsOf(decision, plan),
      leanRunsOverRisk: indexes.filter((i) => choice.lean[i]! > 0).length,
      richRuns: indexes.filter((i) => choice.rich[i]! > 0).length,
      loss: ratio(weight === 0 ? 0 : weighted / weight),
      secondsLost: secondsLost(
        open.map(({ timed }) => timed),
        losses,
      ),
    };
  });
}

/** The best plan with another first act that keeps the limits no worse. */
export function runnerUp(decision: Decision): Plan['runnerUp'] {
  const { choice, fresh, steady, open } = decision;
  if (open.length === 0) return null;
  const other = bestOtherFirstAct(choice, { ...fresh, plan: steady.plan });
  if (other === null) return null;
  const worse =
    leanOfHarm(other.cost.harm) > leanOfHarm(steady.cost.harm) ||
    richOfHarm(other.cost.harm) > richOfHarm(steady.cost.harm);
  if (worse) return null;
  return {
    settings: settingsOf(decision, other.plan),
    margin: ratio((other.cost.cost - steady.cost.cost) * LOSS_UNIT),
  };
}
