import type { Plan } from '@/lib/plan/types';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import {
  acceptedOnlySentence,
  feedHoursSentence,
  shareAgainSentence,
  takenToBeFittedSentence,
} from '@/lib/words/feed';
import { isolated } from '@/lib/words/isolated';
import { settingText } from '@/lib/words/settings';
import { acceptedAct, acceptedStart } from './accepted-acts';
import type { CalendarAct, CalendarContext } from './calendar-act';
import { danger, droppedText, liveStart, liveSwap } from './live-acts';
import type { LivePlan } from './live-plans';
import { type MatchedSwap, matchedSwaps } from './matched-swaps';

/** Everything of one machine's night that belongs into a calendar, by time. */
export function calendarActs(live: LivePlan, context: CalendarContext): readonly CalendarAct[] {
  const { standing } = live;
  const acts = [
    startAct(live, context),
    ...matchedSwaps(live).map((swap) => swapAct(live, swap, context)),
    standing === null ? null : withFooter(danger(standing, context), live, context),
  ];
  return acts.filter((act) => act !== null).sort((a, b) => a.start - b.start || (a.key < b.key ? -1 : 1));
}

function startAct(live: LivePlan, context: CalendarContext): CalendarAct | null {
  const { accepted, standing, settled, difference } = live;
  if (accepted !== null && settled[0] === true) return acceptedStart(accepted, context);
  if (standing === null)
    return accepted === null ? null : unplanned(acceptedStart(accepted, context), context);
  const change = difference?.changes.find(({ code }) => code === 'start-changed') ?? null;
  return withFooter(
    shareAgain(liveStart(standing, change, context), live, change === null ? null : 0),
    live,
    context,
  );
}

function swapAct(live: LivePlan, swap: MatchedSwap, context: CalendarContext): CalendarAct | null {
  const { accepted, settled } = live;
  const plan = live.standing?.plan ?? null;
  if (swap.live !== null && plan !== null) {
    const act = liveSwap(plan, { ...swap, live: swap.live }, context);
    return withFooter(
      shareAgain(act, live, swap.change === null ? null : swap.live.beforeRun),
      live,
      context,
    );
  }
  if (swap.accepted === null || accepted === null) return null;
  const act = acceptedAct(accepted, { key: swap.key, swap: swap.accepted }, context);
  if (settled[swap.accepted.beforeRun] === true) return act;
  return plan === null ? unplanned(act, context) : dropped(act, { plan, live, swap }, context);
}

type Dropped = { readonly plan: Plan; readonly live: LivePlan; readonly swap: MatchedSwap };

function dropped(
  act: CalendarAct,
  { plan, live, swap }: Dropped,
  context: CalendarContext,
): CalendarAct | null {
  const cancelled = {
    ...act,
    cancelled: true,
    summary: `Cancelled: ${act.summary}`,
    description: droppedText(plan, swap.change, context),
  };
  return withFooter(shareAgain(cancelled, live, swap.accepted?.beforeRun ?? null), live, context);
}

/** An act that differs from the accepted plan, for a run: the calendar cannot know whether it is done. */
function shareAgain(act: CalendarAct, { accepted, sortedRuns }: LivePlan, run: number | null): CalendarAct {
  const setting = run === null ? undefined : accepted?.settings[run];
  if (run === null || setting === undefined) return act;
  const sentence = shareAgainSentence(settingText(setting), isolated(sortedRuns[run]!.name));
  return { ...act, description: [...act.description, sentence] };
}

/** The accepted plan itself, where there are no hours to look at it again. */
function unplanned(act: CalendarAct, { sharedAt, voice }: CalendarContext): CalendarAct {
  return { ...act, description: [acceptedOnlySentence(sharedAt, voice.zone), ...act.description] };
}

/** What belongs under every act that the hours of now had a say in. */
function withFooter(
  act: CalendarAct | null,
  { takenToBeFitted }: LivePlan,
  { hours, sharedAt, voice }: CalendarContext,
): CalendarAct | null {
  if (act === null) return null;
  const source = feedHoursSentence(hours, sharedAt, voice.zone);
  const fitted = takenToBeFitted === null ? [] : [takenToBeFittedSentence(settingText(takenToBeFitted))];
  return {
    ...act,
    description: [...act.description, ...fitted, SWAP_CAUTION_LINE, source].filter((line) => line !== ''),
  };
}
