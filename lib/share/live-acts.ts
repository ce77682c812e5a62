import type { PlanChange } from '@/lib/plan/compared';
import type { Plan, Swap } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';
import { actSentences } from '@/lib/words/acts';
import { callSentences } from '@/lib/words/call';
import { changeSentences } from '@/lib/words/changes';
import { dangerSentences } from '@/lib/words/danger';
import { runName } from '@/lib/words/runs';
import { actText, settingText } from '@/lib/words/settings';
import { actWindow } from './act-window';
import { type CalendarAct, type CalendarContext, revisedAt } from './calendar-act';
import type { MatchedSwap } from './matched-swaps';

/** An act before a run of a live plan, without its words. */
function before(plan: Plan, run: number, context: CalendarContext) {
  return { cancelled: false, revisedAt: revisedAt(plan.sortedRuns[run]!, context) };
}

function windowOf(plan: Plan, { beforeRun, kind }: Swap, { swapMinutes }: CalendarContext) {
  return actWindow(plan.sortedRuns, beforeRun, kind === 'trim' ? 0 : swapMinutes);
}

function changeText(change: PlanChange | null, plan: Plan, { voice }: CalendarContext): readonly string[] {
  if (change === null) return [];
  const sentences = changeSentences({ changes: [change], nextActChanged: false }, plan, voice);
  return sentences.map((sentence) => `Against the accepted plan: ${sentence}`);
}

/** What the first run is made on: there also where nothing is to be fitted all night, so that a calendar says so. */
export function liveStart(
  standing: Standing,
  change: PlanChange | null,
  context: CalendarContext,
): CalendarAct {
  const { plan } = standing;
  const swap = plan.swaps.find(({ beforeRun }) => beforeRun === 0);
  return {
    ...before(plan, 0, context),
    ...(swap === undefined ? actWindow(plan.sortedRuns, 0, 0) : windowOf(plan, swap, context)),
    key: 'start',
    summary:
      swap === undefined
        ? `Start on ${settingText(plan.runs[0]!.setting)}`
        : `${actText(swap.from, swap.to)} before ${runName(plan, 0)}`,
    description: [...callSentences(standing, context.voice), ...changeText(change, plan, context)],
  };
}

/** A swap still to come, with its reason, its price and what moved. */
export function liveSwap(
  plan: Plan,
  { key, live, change }: MatchedSwap & { readonly live: Swap },
  context: CalendarContext,
): CalendarAct {
  const words = actSentences(plan, context.voice).find(({ swap }) => swap === live);
  return {
    ...before(plan, live.beforeRun, context),
    ...windowOf(plan, live, context),
    key,
    summary: `${actText(live.from, live.to)} before ${runName(plan, live.beforeRun)}`,
    description: [
      ...(words === undefined
        ? []
        : [`${words.act} ${words.where} (${words.window}).`, words.begin, words.why, words.ifSkipped]),
      ...changeText(change, plan, context),
    ],
  };
}

/** What to say of a swap of the accepted plan that is not wanted any more. */
export function droppedText(
  plan: Plan,
  change: PlanChange | null,
  context: CalendarContext,
): readonly string[] {
  return change === null ? ['These jets are in already.'] : changeText(change, plan, context);
}

/** An alarm before the first run that is not to be raced as it is; there is no swap that would carry it. */
export function danger({ plan, dangers }: Standing, context: CalendarContext): CalendarAct | null {
  const [first] = dangers.flatMap(({ runs }) => runs).sort((a, b) => a.run - b.run);
  if (first === undefined) return null;
  return {
    ...before(plan, first.run, context),
    ...actWindow(plan.sortedRuns, first.run, context.swapMinutes),
    key: 'danger',
    summary: `Do not race ${runName(plan, first.run)} on ${settingText(first.setting)}`,
    description: dangerSentences(dangers, plan),
  };
}
