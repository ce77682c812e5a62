import { fail, ok, type Result } from '@/lib/result/result';
import { clockSeconds, dateStart, utcDate } from './calendar';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from './instant';
import { localClock, offsetMinutes } from './zone';
import { zoneOffset } from './zone-offset';

/** A change of the clocks: at `at` they jump by `minutes`; + forward (spring), - back (autumn). */
export type ClockChange = {
  readonly at: Instant;
  readonly minutes: number;
  /** The clock time that `at` would have had, and the one it has. */
  readonly from: string;
  readonly to: string;
};

export type ClockProblem =
  | { readonly code: 'not-a-date'; readonly text: string }
  | { readonly code: 'not-a-clock'; readonly text: string }
  | { readonly code: 'unknown-zone'; readonly zone: string }
  /** The clocks jump over this time that day. */
  | { readonly code: 'missing-hour'; readonly change: ClockChange };

export type LocalTime = {
  readonly at: Instant;
  /** Set where the clock shows this time twice that day: `at` is the earlier, `later` the other one. */
  readonly doubled: { readonly later: Instant; readonly change: ClockChange } | null;
};

const DAY_MS = 24 * HOUR_MS;

/** A date of the calendar moved by whole days; null where the text is no date. */
export function addDays(date: string, days: number): string | null {
  const start = dateStart(date);
  return start === null ? null : utcDate(start + days * DAY_MS);
}

/** The first change of the clocks after `from` and not after `to`; null where there is none. */
export function clockChange(from: Instant, to: Instant, zone: string): ClockChange | null {
  for (let start: number = from; start < to; start += DAY_MS) {
    let [before, after] = [start, Math.min(start + DAY_MS, to)];
    const offset = offsetMinutes(instant(before), zone);
    if (offsetMinutes(instant(after), zone) === offset) continue;
    while (after - before > 1) {
      const middle = Math.floor((before + after) / 2);
      if (offsetMinutes(instant(middle), zone) === offset) before = middle;
      else after = middle;
    }
    const at = instant(after);
    const minutes = offsetMinutes(at, zone) - offset;
    const unchanged = localClock(instant(at + offset * MINUTE_MS), 'UTC');
    return { at, minutes, from: unchanged, to: localClock(at, zone) };
  }
  return null;
}

/**
 * The instant at which a clock in `zone` shows `clock` on `date`. 24:00 is midnight at the end of the date.
 * A time that the clocks jump over is a problem; one they show twice is the earlier, with the later beside it.
 */
export function fromLocal(date: string, clock: string, zone: string): Result<LocalTime, ClockProblem> {
  const offset = zoneOffset(zone);
  if (offset === null) return fail({ code: 'unknown-zone', zone });
  const day = dateStart(date);
  if (day === null) return fail({ code: 'not-a-date', text: date });
  const seconds = clockSeconds(clock.trim());
  if (seconds === null) return fail({ code: 'not-a-clock', text: clock });
  const shown = day + seconds * 1000;
  // No zone is a day away from UTC, so a change that matters lies between these two.
  const [before, after] = [shown - DAY_MS, shown + DAY_MS];
  const possible = [offset(before), offset(after)].flatMap((east) =>
    offset(shown - east) === east ? [shown - east] : [],
  );
  if (possible.length === 0) {
    const change = clockChange(instant(before), instant(after), zone);
    if (change !== null) return fail({ code: 'missing-hour', change });
    throw new Error(`no time and no change of the clocks: ${date} ${clock} ${zone}`);
  }
  const [earlier, later] = [instant(Math.min(...possible)), instant(Math.max(...possible))];
  const change = clockChange(earlier, later, zone);
  return ok({ at: earlier, doubled: change === null ? null : { later, change } });
}
