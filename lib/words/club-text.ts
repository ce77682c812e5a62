import type { ClubAct } from '@/lib/club/acts';
import type { Briefing } from '@/lib/club/briefing';
import { dueTogether } from '@/lib/club/due';
import type { EventJson } from '@/lib/contract/event';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { SWAP_CAUTION_LINE } from './cautions';
import { borrowingSentences, type ClubNames, clubActWords, clubSentences } from './club';
import { listing } from './listing';
import { eventLine } from './print-facts';
import { planClock, runName } from './runs';
import { actText, settingText } from './settings';
import { dateClockText } from './times';

type Spoken = {
  readonly event: EventJson;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly now: Instant;
};

/** The whole briefing as plain text, for a group chat: who puts in what by when, in the order of time. */
export function briefingText(briefing: Briefing, { event, names, zone, now }: Spoken): string {
  const { acts, planned, borrowings } = briefing;
  const plans = new Map(planned.map(({ racer, plan }) => [racer.id, plan]));
  const busy = new Set(acts.map(({ racerId }) => racerId));
  const idle = planned.filter(({ racer }) => !busy.has(racer.id));
  const blocks = [
    [
      eventLine(event),
      `As planned at ${dateClockText(now, zone)}. The forecast moves: look again before each swap.`,
    ],
    clubSentences(briefing, names, zone),
    ...dueTogether(acts).map(({ acts: due }) =>
      due.flatMap((act) => actLine(act, briefing, { names, zone })),
    ),
    idle.length === 0
      ? []
      : [
          `Nothing to put in: ${listing(
            idle.map(
              ({ racer, standing }) => `${names.racer(racer.id)} (${settingText(standing.inNow.setting)})`,
            ),
          )}.`,
        ],
    borrowings.flatMap((borrowing) => {
      const plan = plans.get(borrowing.want.racerId);
      return plan === undefined
        ? []
        : [`${names.racer(borrowing.want.racerId)}: ${borrowingSentences(borrowing, plan, names).join(' ')}`];
    }),
    [SWAP_CAUTION_LINE],
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function actLine(
  act: ClubAct,
  { planned }: Briefing,
  { names, zone }: Pick<Spoken, 'names' | 'zone'>,
): readonly string[] {
  const plan = planned.find(({ racer }) => racer.id === act.racerId)?.plan;
  if (plan === undefined) return [];
  const { time } = clubActWords(act, plan, planClock(plan, zone));
  const { from, to, beforeRun } = act.swap;
  return [`${time} ${names.racer(act.racerId)}: ${actText(from, to)} before ${runName(plan, beforeRun)}.`];
}
