import { sameMains } from '@/lib/carb/same-setting';
import type { AcceptedPlan } from '@/lib/plan/accepted-plan';
import type { SwapAct } from '@/lib/plan/compared';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { countedOnSentence, notInSentence } from '@/lib/words/feed';
import { actText, settingText } from '@/lib/words/settings';
import { actWindow } from './act-window';
import { type CalendarAct, type CalendarContext, revisedAt } from './calendar-act';

type KeyedSwap = { readonly key: string; readonly swap: SwapAct };

/** An act of the accepted plan, told from that plan alone: no forecast changes a word of it. */
export function acceptedAct(
  { sortedRuns }: AcceptedPlan,
  { key, swap }: KeyedSwap,
  context: CalendarContext,
): CalendarAct {
  const { name } = sortedRuns[swap.beforeRun]!;
  const minutes = sameMains(swap.from.mains, swap.to.mains) ? 0 : context.swapMinutes;
  return {
    ...actWindow(sortedRuns, swap.beforeRun, minutes),
    key,
    cancelled: false,
    revisedAt: revisedAt(sortedRuns[swap.beforeRun]!, context),
    summary: `${actText(swap.from, swap.to)} before ${name}`,
    description: [
      'By the accepted plan.',
      countedOnSentence(settingText(swap.to), name),
      notInSentence(swap, name),
      SWAP_CAUTION_LINE,
    ].filter((line) => line !== ''),
  };
}

/** The start of the night by the accepted plan. */
export function acceptedStart(accepted: AcceptedPlan, context: CalendarContext): CalendarAct {
  const { sortedRuns, settings, swaps } = accepted;
  const key = 'start';
  const swap = swaps.find(({ beforeRun }) => beforeRun === 0);
  if (swap !== undefined) return acceptedAct(accepted, { key, swap }, context);
  const stay = { beforeRun: 0, from: settings[0]!, to: settings[0]!, windowStart: sortedRuns[0]!.start };
  return {
    ...acceptedAct(accepted, { key, swap: stay }, context),
    summary: `Start on ${settingText(settings[0]!)}`,
  };
}
