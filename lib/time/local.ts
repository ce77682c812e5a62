import { DateTime } from 'luxon';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from './instant';
import { DIGITS, inZone, localClock, offsetMinutes, zoneExists } from './zone';

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

const DATE = /^\d{4}-\d{2}-\d{2}$/;
const CLOCK = /^(\d{1,2}):(\d{2})(?::(\d{2}))?$/;

/** A date of the calendar moved by whole days; null where the text is no date. */
export function addDays(date: string, days: number): string | null {
  const day = DateTime.fromISO(date, { zone: 'utc', ...DIGITS });
  return DATE.test(date) && day.isValid ? day.plus({ days }).toISODate() : null;
}

/** Seconds since midnight of a clock time from 00:00 to 24:00; null where it is none. */
function clockSeconds(clock: string): number | null {
  const match = CLOCK.exec(clock.trim());
  if (match === null) return null;
  const [hour, minute, second] = [Number(match[1]), Number(match[2]), Number(match[3] ?? 0)];
  const seconds = hour * 3600 + minute * 60 + second;
  return minute < 60 && second < 60 && seconds <= 86_400 ? seconds : null;
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
    const unchanged = inZone(at, 'utc').plus({ minutes: offset });
    return { at, minutes, from: unchanged.toFormat('HH:mm'), to: localClock(at, zone) };
  }
  return null;
}

/**
 * The instant at which a clock in `zone` shows `clock` on `date`. 24:00 is midnight at the end of the date.
 * A time that the clocks jump over is a problem; one they show twice is the earlier, with the later beside it.
 */
export function fromLocal(date: string, clock: string, zone: string): Result<LocalTime, ClockProblem> {
  if (!zoneExists(zone)) return fail({ code: 'unknown-zone', zone });
  const day = DateTime.fromISO(date, { zone: 'utc', ...DIGITS });
  if (!DATE.test(date) || !day.isValid) return fail({ code: 'not-a-date', text: date });
  const seconds = clockSeconds(clock);
  if (seconds === null) return fail({ code: 'not-a-clock', text: clock });
  const wanted = day.plus({ seconds });
  const shown = wanted.setZone(zone, { keepLocalTime: true });
  const possible = shown.getPossibleOffsets().map((time) => instant(time.toMillis()));
  const earlier = instant(Math.min(...possible));
  const later = instant(Math.max(...possible));
  if (inZone(earlier, zone).toISO({ includeOffset: false }) !== wanted.toISO({ includeOffset: false })) {
    // Jumped over: the change is less than a day and a bit away (a zone once skipped a whole date).
    const change = clockChange(instant(earlier - 26 * HOUR_MS), instant(earlier + 26 * HOUR_MS), zone);
    if (change !== null) return fail({ code: 'missing-hour', change });
  }
  const change = clockChange(earlier, later, zone);
  return ok({ at: earlier, doubled: change === null ? null : { later, change } });
}
