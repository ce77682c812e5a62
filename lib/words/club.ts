import type { Setting } from '@/lib/carb/machine';
import { sameMains } from '@/lib/carb/same-setting';
import type { ClubAct } from '@/lib/club/acts';
import type { Briefing } from '@/lib/club/briefing';
import type { Borrowing } from '@/lib/club/loans';
import type { BriefingCell } from '@/lib/club/matrix';
import type { Plan } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { actSentences } from './acts';
import { loudSentences } from './call';
import { shortCount } from './counts';
import { dangerPoints } from './danger';
import { capital, counted, listing } from './listing';
import { planClock, runNames } from './runs';
import { jetsText, settingText } from './settings';
import { type Clock, clockText } from './times';

/** "400/390/400 → 410/400/410", or for a turn of the knob alone "trim 3 → trim 4". */
export function changeText(from: Setting, to: Setting): string {
  if (sameMains(from.mains, to.mains) && from.trim !== to.trim) return `trim ${from.trim} → trim ${to.trim}`;
  return `${settingText(from)} → ${settingText(to)}`;
}

/** One act of the club's list in words. */
export type ClubActWords = {
  /** "21:10", or "by 18:45" before the first run. */
  readonly time: string;
  readonly change: string;
  /** "between Round 3 and Round 4". */
  readonly where: string;
  /** "21:10 to 21:25". */
  readonly window: string;
  /** "Begin by 21:25, ready by 21:40." */
  readonly begin: string;
  readonly why: string;
  /** Where and until when, as far as the time has not said it, and why. */
  readonly about: string;
};

export function clubActWords(act: ClubAct, plan: Plan, clock: Clock): ClubActWords {
  const words = actSentences(plan, clock).find(({ swap }) => swap === act.swap);
  const at = clockText(act.at, clock);
  const time = act.beforeFirst ? `by ${at}` : at;
  const { where = '', window = '', begin = '', why = '' } = words ?? {};
  const about = [capital(window === time ? where : `${where}, ${window}`), why].join('. ');
  return { time, change: changeText(act.swap.from, act.swap.to), where, window, begin, why, about };
}

/** What a cell of the matrix says beside its jets; nothing where there is nothing to say. */
export function cellStateText({ state, leanCount }: BriefingCell): string {
  switch (state) {
    case 'lean':
      return leanCount === null ? 'lean' : `lean, risk ${shortCount(leanCount)}`;
    case 'drowned':
      return 'too rich to run';
    case 'rich':
      return 'rich';
    case 'unknown':
      return 'no hours';
    case 'made':
      return 'run';
    case 'right':
    case 'none':
      return '';
  }
}

export type ClubNames = {
  readonly racer: (id: string) => string;
  readonly box: (id: string) => string;
};

/** What a racer lacks, who can lend it, and how far that helps. */
export function borrowingSentences(
  { want, loans, left }: Borrowing,
  plan: Plan,
  names: Pick<ClubNames, 'box'>,
): readonly string[] {
  const sizes = want.sizes === null ? 'one that is on no list' : jetsText(want.sizes);
  const side =
    want.side === 'richer'
      ? `No jet that will do for ${runNames(plan, want.runs)}: needs ${sizes}.`
      : `No jet lean enough for ${runNames(plan, want.runs)}: needs ${sizes}, no smaller.`;
  if (loans.length === 0)
    return [
      side,
      want.side === 'richer'
        ? 'Nobody here has one to spare: ask outside the club, or sit these runs out.'
        : 'Nobody here has one to spare: it costs power, not an engine.',
    ];
  const offers = [...new Set(loans.map(({ fromBox }) => fromBox))].map((fromBox) => {
    const jets = loans
      .filter((loan) => loan.fromBox === fromBox)
      .map(({ size, count }) => `${count} × ${size}`);
    return `${names.box(fromBox)} can spare ${listing(jets)}`;
  });
  return [side, `${listing(offers)}.`, leftText(left, want.side, plan)];
}

function leftText(left: readonly number[], side: Borrowing['want']['side'], plan: Plan): string {
  const what = side === 'richer' ? 'outside its limits' : 'too rich';
  return left.length === 0
    ? `Planned with them, none of these runs is ${what}.`
    : `Even with them ${runNames(plan, left)} ${left.length === 1 ? 'stays' : 'stay'} ${what}.`;
}

/** "420 (3 short)": sizes of a shared box that are asked for too often. */
export function shortfallText(short: ReadonlyMap<number, number>): string {
  return listing([...short].map(([size, count]) => `${size} (${count} short)`));
}

/** The night of a club in a few sentences: what must be heard, engines in danger first, and how much there is to do. */
export function clubCall(
  briefing: Briefing,
  names: Pick<ClubNames, 'racer'>,
  zone: ClockZone,
): { readonly loud: readonly string[]; readonly calm: string } {
  const { planned, unplanned, acts } = briefing;
  const loud = planned.filter(({ standing }) => isLoud(standing));
  const first = acts[0];
  const plan = planned.find(({ racer }) => racer.id === first?.racerId)?.plan;
  return {
    loud: [
      ...loudRacers(loud, names, zone),
      ...(unplanned.length === 0
        ? []
        : [`No plan for ${listing(unplanned.map(({ racer }) => names.racer(racer.id)))}.`]),
    ],
    calm:
      first === undefined || plan === undefined
        ? `Nothing to swap for ${counted(planned.length, 'racer')}.`
        : `${counted(acts.length, 'job')} for ${counted(planned.length, 'racer')}; the first ${first.beforeFirst ? 'by' : 'at'} ${clockText(first.at, planClock(plan, zone))} for ${names.racer(first.racerId)}.`,
  };
}

/** The same in the order of reading, for paper and for a chat. */
export function clubSentences(...of: Parameters<typeof clubCall>): readonly string[] {
  const { loud, calm } = clubCall(...of);
  return [...loud, calm];
}

/** True where a racer must hear something before anything else: a swap nobody confirmed, runs not to be raced. */
export function isLoud({ question, dangers }: Standing): boolean {
  return question !== null || dangers.length > 0;
}

/** More than these are named in one sentence; what each must hear stands below. */
const MOST_LOUD = 3;

function loudRacers(
  loud: Briefing['planned'],
  names: Pick<ClubNames, 'racer'>,
  zone: ClockZone,
): readonly string[] {
  if (loud.length > MOST_LOUD)
    return [
      `Not to be raced as it is, or not known what is in: ${listing(loud.map(({ racer }) => names.racer(racer.id)))}.`,
    ];
  return loud.map(
    ({ racer, standing }) => `${names.racer(racer.id)}: ${loudSentences(standing, { zone }).join(' ')}`,
  );
}

/** One racer's alarm for the wall: "Rounds 5 to 8: lean up to 63 in 64. Borrow 430.", "Is 420 in?". */
export function alarmText({ question, dangers, plan }: Standing): string {
  const asked = question === null ? [] : [`Is ${settingText(question.to)} in?`];
  return [...asked, ...dangerPoints(dangers, plan)].join(' ');
}
