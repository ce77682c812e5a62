import type { Crossing } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { type Clock, clockText, windowText } from './times';

/** Times are good to about five minutes where their range is short ... */
const FINE = 5 * MINUTE_MS;
/** ... and to about a quarter of an hour where it is long or open. */
const COARSE = 15 * MINUTE_MS;
const LONG = 3 * HOUR_MS;

type Said = Pick<Crossing, 'at' | 'earliest' | 'latest'>;

/** No finer than it is known: the middle to the nearest step, the range outwards. */
function rounded({ at, earliest, latest }: Said): Said {
  const step = latest !== null && latest - earliest <= LONG ? FINE : COARSE;
  const to = (round: (steps: number) => number, of: Instant) => instant(round(of / step) * step);
  return {
    at: to(Math.round, at),
    earliest: to(Math.floor, earliest),
    latest: latest === null ? null : to(Math.ceil, latest),
  };
}

/**
 * "about 22:40 (22:05 to 23:20)"; a long range is said first, "some time from 20:45 to 02:15, as likely before 23:30
 * as after it"; an open end is said as one.
 */
export function crossingTime(crossing: Said, clock: Clock): string {
  const { at, earliest, latest } = rounded(crossing);
  const middle = clockText(at, clock);
  if (latest === null)
    return `about ${middle} (${clockText(earliest, clock)} at the earliest, in some forecasts not at all)`;
  return latest - earliest <= LONG
    ? `about ${middle} (${windowText(earliest, latest, clock)})`
    : `some time from ${windowText(earliest, latest, clock)}, as likely before ${middle} as after it`;
}
