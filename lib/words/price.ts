import { sameMains, sameSetting } from '@/lib/carb/same-setting';
import type { BySwapCount, Plan, Worth } from '@/lib/plan/types';
import { formatNumber, formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { counted } from './listing';
import { powerText, withHorsepower } from './power-words';
import { plannedRuns, runName } from './runs';
import { settingText } from './settings';

/** The entry of the plan's own settings among the best for each number of swaps; null where it is none of them. */
export function chosenCount(plan: Plan): BySwapCount | null {
  const chosen = plan.bySwapCount.find((entry) =>
    plan.runs.every(({ setting }, i) => {
      const other = entry.settings[i];
      return other !== undefined && sameSetting(setting, other);
    }),
  );
  const jetSwaps = plan.swaps.filter((swap) => !sameMains(swap.from.mains, swap.to.mains)).length;
  return chosen ?? plan.bySwapCount.find((entry) => entry.swaps === jetSwaps) ?? null;
}

/** What making one swap less would cost, in power and, where runs are timed, in seconds; null where there is none to leave out. */
export function oneSwapLess(plan: Plan): string | null {
  const chosen = chosenCount(plan);
  if (chosen === null || chosen.swaps === 0) return null;
  const fewer = plan.bySwapCount
    .filter(({ swaps }) => swaps < chosen.swaps)
    .reduce<BySwapCount | null>(
      (best, entry) => (best === null || entry.swaps > best.swaps ? entry : best),
      null,
    );
  if (fewer === null) return null;
  return `${without(chosen, fewer)}: ${costs(plan, chosen, fewer).join(', ')}.`;
}

function without(chosen: BySwapCount, fewer: BySwapCount): string {
  if (fewer.swaps > 0) return `With ${counted(fewer.swaps, 'swap')}`;
  return chosen.swaps === 1 ? 'Without the swap' : 'Without any swap';
}

/** Half of the last digit that power is printed with. */
const SHOWS = 0.00005;

function costs({ worth }: Plan, chosen: BySwapCount, fewer: BySwapCount): readonly string[] {
  const lean = fewer.leanRunsOverRisk - chosen.leanRunsOverRisk;
  const rich = fewer.richRuns - chosen.richRuns;
  const told = [
    ...(lean > 0 ? [`${counted(lean, 'more run')} in danger of running lean`] : []),
    ...(rich > 0 ? [`${counted(rich, 'more run')} too rich`] : []),
    ...powerCosts(chosen, fewer, { leaner: lean > 0, worth }),
  ];
  return told.length === 0 ? ['nothing lost that shows'] : told;
}

/** Power that seems to come from running leaner is a risk, never a gain to count on. */
function powerCosts(
  chosen: BySwapCount,
  fewer: BySwapCount,
  { leaner, worth }: { readonly leaner: boolean; readonly worth: Worth },
): readonly string[] {
  const power = fewer.loss - chosen.loss;
  if (Math.abs(power) < SHOWS) return [];
  if (power < 0 && leaner) return ['no power to count on'];
  const seconds =
    fewer.secondsLost !== null && chosen.secondsLost !== null ? fewer.secondsLost - chosen.secondsLost : null;
  return [
    withHorsepower(
      `${formatPercent(ratio(Math.abs(power)), 2)} ${power < 0 ? 'more' : 'less'} power`,
      ratio(power),
      worth.ratedPower,
    ),
    ...(seconds === null || Math.abs(seconds) < 0.005
      ? []
      : [`${formatNumber(Math.abs(seconds), 2)} s ${seconds < 0 ? 'faster' : 'slower'} over the timed runs`]),
  ];
}

/** The next best plan that begins differently, by the run where it first differs; null where there is none. */
export function runnerUpSentence(plan: Plan): string | null {
  if (plan.runnerUp === null) return null;
  const { settings, margin } = plan.runnerUp;
  const other = plannedRuns(plan).find(({ run, setting }) => {
    const instead = settings[run];
    return instead !== undefined && !sameSetting(instead, setting);
  });
  const instead = other === undefined ? undefined : settings[other.run];
  if (other === undefined || instead === undefined) return null;
  const behind =
    margin < SHOWS ? 'as good in power' : `behind by ${powerText(margin, plan.worth.ratedPower, 2)}`;
  return `Almost as good: ${settingText(instead)} in ${runName(plan, other.run)}, ${behind}.`;
}
