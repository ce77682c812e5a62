import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { isoDateOf, type Moment, minutesOf, pastedClockText } from './paste-moment';
import type { ClockKind, DayOrder, SkippedLine } from './pasted';

/** When a line's hour is, or why that cannot be said. */
export type LineTime =
  /** `later`: the other moment of a clock time that the night shows twice. */
  { readonly at: Instant; readonly later: Instant | null } | { readonly reason: SkippedLine['reason'] };

export type TimeRules = {
  readonly date: string;
  readonly zone: string;
  readonly dayOrder: DayOrder;
  readonly clock: ClockKind;
};

const HALF_DAY = 720;
const NO_TIME = { reason: 'no-time' } as const;
const NOT_READABLE = { reason: 'time-not-readable' } as const;

type Walk = {
  readonly date: string;
  readonly minutes: number | null;
  readonly at: Instant | null;
  readonly half: 0 | 720;
};
type Step = { readonly time: LineTime; readonly walk: Walk };

/** Where 1:00 to 12:59 stand without AM and PM: the half of the day turns over each time the hours fall. */
function halfDayMinutes(minutes: number, walk: Walk): { readonly minutes: number; readonly half: 0 | 720 } {
  const inHalf = minutes % HALF_DAY;
  const before = walk.minutes === null ? null : walk.minutes % HALF_DAY;
  const half = before !== null && inHalf < before ? (walk.half === 0 ? 720 : 0) : walk.half;
  return { minutes: inHalf + half, half };
}

/** A clock time after the one before it: the same date, or the next where it would run backwards. */
function stepClock(minutes: number, walk: Walk, { zone }: TimeRules): Step {
  const place = (date: string): LineTime & { readonly date: string } => {
    const local = fromLocal(date, pastedClockText(minutes), zone);
    if (!local.ok)
      return { date, reason: local.reason.code === 'missing-hour' ? 'missing-hour' : 'time-not-readable' };
    const { at, doubled } = local.value;
    // The second 1:00 of the night clocks go back.
    if (doubled !== null && walk.at !== null && at <= walk.at && doubled.later > walk.at)
      return { date, at: doubled.later, later: null };
    return { date, at, later: doubled?.later ?? null };
  };
  const sameDay = place(walk.date);
  const runsBack = 'at' in sameDay && walk.at !== null && sameDay.at < walk.at;
  const found =
    runsBack || ('reason' in sameDay && walk.minutes !== null && minutes < walk.minutes)
      ? place(addDays(walk.date, 1) ?? walk.date)
      : sameDay;
  const { date, ...time } = found;
  return { time, walk: { date, minutes, at: 'at' in time ? time.at : walk.at, half: walk.half } };
}

function step(moment: Moment | null | 'missing', walk: Walk, rules: TimeRules): Step {
  if (moment === 'missing') return { time: NO_TIME, walk };
  if (moment === null) return { time: NOT_READABLE, walk };
  if (moment.instant !== null) return { time: { at: moment.instant, later: null }, walk };
  if (moment.clock === null) return { time: NO_TIME, walk };
  const date = isoDateOf(moment.date, rules.dayOrder);
  if (date !== null && addDays(date, 0) === null) return { time: NOT_READABLE, walk };
  // On a new date the clock starts over.
  const dated = date === null || date === walk.date ? walk : { ...walk, date, minutes: null, at: null };
  const plain = minutesOf(moment.clock);
  if (rules.clock === '24-hour' || moment.clock.half !== null) {
    const placed = stepClock(plain, dated, rules);
    // A written date stands, whatever came before it.
    return date !== null && placed.walk.date !== date
      ? stepClock(plain, { ...dated, at: null, minutes: null }, rules)
      : placed;
  }
  const { minutes, half } = halfDayMinutes(plain, dated);
  return stepClock(minutes, { ...dated, half }, rules);
}

/** Turns the times of all lines, in their order, into instants. */
export function placeTimes(
  moments: readonly (Moment | null | 'missing')[],
  rules: TimeRules,
): readonly LineTime[] {
  let walk: Walk = { date: rules.date, minutes: null, at: null, half: rules.clock === 'starts-pm' ? 720 : 0 };
  return moments.map((moment) => {
    const next = step(moment, walk, rules);
    walk = next.walk;
    return next.time;
  });
}

/** Hour after hour of real time from the first: clocks going forward or back skip or repeat none. */
export function countHours(start: Instant, count: number): readonly LineTime[] {
  return Array.from({ length: count }, (_, i) => ({ at: instant(start + i * HOUR_MS), later: null }));
}

/** True where 12:00 is followed by 1:00 and nothing says which half of the day it is. */
export function needsHalfDay(moments: readonly (Moment | null | 'missing')[]): boolean {
  const clocks = moments.flatMap((moment) =>
    moment === null || moment === 'missing' || moment.clock === null || moment.date !== null
      ? []
      : [moment.clock],
  );
  return (
    clocks.every(({ hour, half }) => half === null && hour >= 1 && hour <= 12) &&
    clocks.some(({ hour }, i) => hour === 12 && clocks[i + 1]?.hour === 1)
  );
}

/** True where most clock times lie a little before the one above them: the latest stands first. */
export function runsBackwards(moments: readonly (Moment | null | 'missing')[]): boolean {
  const minutes = moments.flatMap((moment) =>
    moment === null || moment === 'missing' || moment.clock === null || moment.date !== null
      ? []
      : [minutesOf(moment.clock)],
  );
  const steps = minutes.slice(1).map((value, i) => value - (minutes[i] ?? 0));
  const back = steps.filter((value) => value < 0).length;
  return back > 1 && back > steps.length - back;
}
