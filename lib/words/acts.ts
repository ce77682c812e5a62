import type { Plan, Swap } from '@/lib/plan/types';
import { shortCount } from './counts';
import { powerText } from './power-words';
import { planClock, runName } from './runs';
import { actText, settingText } from './settings';
import { type Clock, clockText, windowText } from './times';
import type { Voice } from './voice';

/** One act of the night in words. */
export type ActWords = {
  readonly swap: Swap;
  /** "Put in 420". */
  readonly act: string;
  /** "between Round 3 and Round 4". */
  readonly where: string;
  /** "22:05 to 22:25", or "by 18:45" before the first run. */
  readonly window: string;
  /** "Begin by 22:25, ready by 22:40." */
  readonly begin: string;
  /** "410 goes lean by Round 7, risk 40 in 64." */
  readonly why: string;
  /** '' where there is nothing to add to the reason. */
  readonly ifSkipped: string;
};

export function actSentences(plan: Plan, { zone }: Pick<Voice, 'zone'>): readonly ActWords[] {
  const clock = planClock(plan, zone);
  return plan.swaps.map((swap) => ({
    swap,
    act: actText(swap.from, swap.to),
    where: whereText(plan, swap),
    window: swapWindowText(swap, clock),
    begin: beginText(swap, clock),
    why: whyText(plan, swap),
    ifSkipped: ifSkippedText(plan, swap),
  }));
}

/** "Put in 420 between Round 3 and Round 4 (22:05 to 22:25)". */
export function actInOne(plan: Plan, swap: Swap, clock: Clock): string {
  return `${actText(swap.from, swap.to)} ${whereText(plan, swap)} (${swapWindowText(swap, clock)})`;
}

function whereText(plan: Plan, { beforeRun }: Swap): string {
  const before = plan.runs[beforeRun - 1];
  const next = runName(plan, beforeRun);
  return before === undefined ? `before ${next}` : `between ${runName(plan, before.run)} and ${next}`;
}

/** When to begin at the latest, and by when it must be in: two times that must not be taken for each other. */
function beginText({ kind, latestStart, readyBy }: Swap, clock: Clock): string {
  return kind === 'trim'
    ? `Done by ${clockText(readyBy, clock)}.`
    : `Begin by ${clockText(latestStart, clock)}, ready by ${clockText(readyBy, clock)}.`;
}

/** Before the first run there is no run that ends, so only the latest moment is said. */
export function swapWindowText({ beforeRun, windowStart, latestStart }: Swap, clock: Clock): string {
  return beforeRun === 0
    ? `by ${clockText(latestStart, clock)}`
    : windowText(windowStart, latestStart, clock);
}

/** The one cause of a swap, with the first run that asks for it. */
function whyText(plan: Plan, { from, reason }: Swap): string {
  const old = settingText(from);
  switch (reason.code) {
    case 'old-turns-lean':
      return `${old} goes lean by ${runName(plan, reason.run)}, risk ${shortCount(reason.count)}. The swap is for safety, not for power.`;
    case 'old-drowned':
      return `${old} is so rich by ${runName(plan, reason.run)} that it may not run.`;
    case 'old-turns-rich':
      return `${old} is too rich by ${runName(plan, reason.run)}, which costs power.`;
    case 'power':
      return `It gains ${powerText(reason.gain, plan.worth.ratedPower)} over ${old}.`;
    case 'as-accepted':
      return 'It is in the plan you accepted, and makes no difference that counts.';
  }
}

/** What a swap left out costs; that the old jet is lean is said already. Lean costs no power that can be counted on. */
function ifSkippedText({ worth }: Plan, { from, reason, ifSkipped }: Swap): string {
  if (reason.code === 'old-turns-lean' || ifSkipped.loss < SHOWS) return '';
  return `Left out, ${settingText(from)} loses ${powerText(ifSkipped.loss, worth.ratedPower)}.`;
}

/** Half of the last digit a loss is printed with. */
const SHOWS = 0.0005;
