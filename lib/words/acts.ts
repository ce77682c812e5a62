import type { Plan, Swap, SwapReason } from '@/lib/plan/types';
import { formatPercent } from '@/lib/units/format';
import { chanceCount, forecastCount } from './counts';
import { crossingTime } from './crossing-time';
import { planClock, runName } from './runs';
import { actText, settingText } from './settings';
import { type Clock, clockText, windowText } from './times';
import type { Voice } from './voice';

/** One act of the night in words. */
export type ActWords = {
  readonly swap: Swap;
  /** "Fit 420". */
  readonly act: string;
  /** "between Round 3 and Round 4". */
  readonly where: string;
  /** "22:05 to 22:25", or "by 18:45" before the first run. */
  readonly window: string;
  /** "410 turns lean about 22:40 (22:05 to 23:20)." */
  readonly why: string;
  readonly ifSkipped: string;
};

export function actSentences(plan: Plan, { zone }: Pick<Voice, 'zone'>): readonly ActWords[] {
  const clock = planClock(plan, zone);
  return plan.swaps.map((swap) => ({
    swap,
    act: actText(swap.from, swap.to),
    where: whereText(plan, swap),
    window: actWindow(swap, clock),
    why: whyText(plan, swap, clock),
    ifSkipped: ifSkippedText(swap),
  }));
}

/** "Fit 420 between Round 3 and Round 4 (22:05 to 22:25)". */
export function actInOne(plan: Plan, swap: Swap, clock: Clock): string {
  return `${actText(swap.from, swap.to)} ${whereText(plan, swap)} (${actWindow(swap, clock)})`;
}

function whereText(plan: Plan, { beforeRun }: Swap): string {
  const before = plan.runs[beforeRun - 1];
  const next = runName(plan, beforeRun);
  return before === undefined ? `before ${next}` : `between ${runName(plan, before.run)} and ${next}`;
}

/** Before the first run there is no run that ends, so only the latest moment is said. */
function actWindow({ beforeRun, windowStart, latestStart }: Swap, clock: Clock): string {
  return beforeRun === 0
    ? `by ${clockText(latestStart, clock)}`
    : windowText(windowStart, latestStart, clock);
}

function whyText(plan: Plan, { from, due, reason, ifSkipped }: Swap, clock: Clock): string {
  const old = settingText(from);
  if (reason.code === 'power') return `It gains ${formatPercent(reason.gain, 1)} power over ${old}.`;
  const state = STATES[reason.code];
  const when = due === null ? '' : ` ${crossingTime(due, clock)}`;
  const count =
    reason.code === 'old-turns-lean'
      ? forecastCount(ifSkipped.leanCount)
      : chanceCount(reason.chance, forecasts(plan));
  return `${old} turns ${state}${when}: ${state} in ${count} if it stays in.`;
}

const STATES: Readonly<Record<Exclude<SwapReason['code'], 'power'>, string>> = {
  'old-turns-lean': 'lean',
  'old-turns-rich': 'rich',
};

/** Lean costs no power that can be counted on, so a loss is said only where one shows. */
function ifSkippedText({ from, ifSkipped }: Swap): string {
  const lean = `is lean in ${forecastCount(ifSkipped.leanCount)}`;
  const loses = ifSkipped.loss >= SHOWS ? ` and loses ${formatPercent(ifSkipped.loss, 1)} power` : '';
  return `Skipped, ${settingText(from)} ${lean}${loses}.`;
}

/** Half of the last digit a loss is printed with. */
const SHOWS = 0.0005;

/** How many forecasts the plan counts in. */
export function forecasts(plan: Plan): number {
  return plan.runs[0]?.leanCount.of ?? 0;
}
