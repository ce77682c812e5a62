import { addMinutes, HOUR_MS, type Instant } from '@/lib/time/instant';
import { type ClockZone, localClock, localDate, localWeekday } from '@/lib/time/zone';
import { listing } from './listing';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** Within this of the event's first moment a clock time alone says enough. */
const SAME_NIGHT_MS = 18 * HOUR_MS;
const SAME_WEEK_MS = 6 * 24 * HOUR_MS;

/** A zone, and the moment from which on a bare clock time is understood: the start of the first run. */
export type Clock = { readonly zone: ClockZone; readonly from?: Instant };

/**
 * Which of two a clock time is that shows twice because the clocks go back, else ''. One hour is the usual step, half
 * an hour that of Lord Howe Island.
 */
function whichOfTwo(at: Instant, zone: ClockZone): string {
  const shown = localClock(at, zone);
  const shows = (minutes: number) => localClock(addMinutes(at, minutes), zone) === shown;
  if (shows(60) || shows(30)) return ' before the clocks go back';
  if (shows(-60) || shows(-30)) return ' after the clocks go back';
  return '';
}

function dayText(at: Instant, { zone, from }: Clock): string {
  const away = from === undefined ? 0 : Math.abs(at - from);
  if (away <= SAME_NIGHT_MS) return '';
  return away <= SAME_WEEK_MS ? weekday(at, { zone }) : `${localDate(at, zone)} `;
}

const weekday = (at: Instant, { zone }: Clock): string => `${WEEKDAYS[localWeekday(at, zone) - 1]} `;

/** "22:05"; "Sun 09:10" on another day; "01:30 after the clocks go back" where the clock shows 01:30 twice. */
export function clockText(at: Instant, clock: Clock): string {
  return `${dayText(at, clock)}${localClock(at, clock.zone)}${whichOfTwo(at, clock.zone)}`;
}

/** A window so long that bare clock times leave open which day each is of. */
const LONG_WINDOW_MS = 12 * HOUR_MS;

/**
 * "22:05 to 22:25"; one time where both are the same minute; "Sat 13:00 to Sun 13:00" where so much lies between that the
 * times alone would not say which day they are of.
 */
export function windowText(from: Instant, to: Instant, clock: Clock): string {
  const isLong = to - from > LONG_WINDOW_MS && localDate(from, clock.zone) !== localDate(to, clock.zone);
  const [first, last] = [from, to].map((at) =>
    isLong && dayText(at, clock) === ''
      ? `${weekday(at, clock)}${clockText(at, clock)}`
      : clockText(at, clock),
  );
  return first === last ? `${first}` : `${first} to ${last}`;
}

/** "2027-01-16 22:05", with no context to lean on. */
export function dateClockText(at: Instant, zone: ClockZone): string {
  return `${localDate(at, zone)} ${clockText(at, { zone })}`;
}

/** Hours of a forecast, those in a row as one stretch: "20:00 to 21:00 and 23:00". */
export function hoursText(hours: readonly Instant[], clock: Clock): string {
  const sorted = [...hours].sort((a, b) => a - b);
  const starts = sorted.filter((at, i) => at - (sorted[i - 1] ?? Number.NEGATIVE_INFINITY) > HOUR_MS);
  const ends = sorted.filter((at, i) => (sorted[i + 1] ?? Number.POSITIVE_INFINITY) - at > HOUR_MS);
  return listing(starts.map((start, i) => windowText(start, ends[i] ?? start, clock)));
}
