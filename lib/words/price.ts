import type { BySwapCount, Plan } from '@/lib/plan/types';
import { formatNumber, formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { chosenCount } from './lean-runs';
import { counted } from './listing';
import { plannedRuns } from './runs';
import { settingText } from './settings';

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
  return `With ${counted(fewer.swaps, 'swap')}: ${costs(chosen, fewer).join(', ')}.`;
}

function costs(chosen: BySwapCount, fewer: BySwapCount): readonly string[] {
  const power = fewer.loss - chosen.loss;
  const seconds =
    fewer.secondsLost !== null && chosen.secondsLost !== null ? fewer.secondsLost - chosen.secondsLost : null;
  const lean = fewer.leanRunsOverRisk - chosen.leanRunsOverRisk;
  const rich = fewer.richRuns - chosen.richRuns;
  return [
    ...(lean > 0 ? [`${counted(lean, 'more run')} in danger of running lean`] : []),
    ...(rich > 0 ? [`${counted(rich, 'more run')} too rich`] : []),
    `${formatPercent(ratio(Math.abs(power)), 2)} ${power < 0 ? 'more' : 'less'} power`,
    ...(seconds === null
      ? []
      : [`${formatNumber(Math.abs(seconds), 2)} s ${seconds < 0 ? 'faster' : 'slower'} over the timed runs`]),
  ];
}

/** The next best plan that begins differently, and how far behind it is; null where there is none. */
export function runnerUpSentence(plan: Plan): string | null {
  if (plan.runnerUp === null) return null;
  const first = plannedRuns(plan)[0]?.run ?? 0;
  const setting = plan.runnerUp.settings[first];
  if (setting === undefined) return null;
  return `Next best: ${settingText(setting)} first, behind by ${formatPercent(plan.runnerUp.margin, 2)} power.`;
}
