import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';

/** From `start` (included) to `end` (not included). */
type Interval = { readonly start: Instant; readonly end: Instant };

const DURATION = /^P(?:(\d+)W)?(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?$/;

/**
 * Length of an ISO 8601 duration in weeks, days, hours, minutes and seconds, such as P1DT6H [ms]; null where it is
 * none. A day is 24 h: the service's times are UTC. Years and months have no length of their own and are refused.
 */
export function durationMs(text: string): number | null {
  const match = DURATION.exec(text);
  // A bare P or a trailing T says nothing.
  if (match === null || /[PT]$/.test(text)) return null;
  const [weeks, days, hours, minutes, seconds] = match.slice(1).map((part) => Number(part ?? 0));
  const all = ((weeks ?? 0) * 7 + (days ?? 0)) * 24 + (hours ?? 0);
  return all * HOUR_MS + (minutes ?? 0) * MINUTE_MS + (seconds ?? 0) * 1000;
}

/** Longer than this is no forecast [ms]. */
const LONGEST_MS = 30 * 24 * HOUR_MS;

/** Reads `start/duration`; null where it is neither, empty, or absurdly long. */
export function readInterval(text: string): Interval | null {
  const [from, length, ...rest] = text.split('/');
  if (from === undefined || length === undefined || rest.length > 0) return null;
  const start = readInstant(from);
  const ms = durationMs(length);
  if (!start.ok || ms === null || ms <= 0 || ms > LONGEST_MS) return null;
  return { start: start.value, end: instant(start.value + ms) };
}
