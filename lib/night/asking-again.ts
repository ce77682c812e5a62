import { MINUTE_MS } from '@/lib/time/instant';

const SECOND_MS = 1000;

/** As often as the server itself asks a service. */
export const ASK_EVERY_MS = 15 * MINUTE_MS;

/** A signal that comes back is often not there at once; one that stays away is not worth the battery. */
const AFTER_FAILURES_MS = [5 * SECOND_MS, 15 * SECOND_MS, 45 * SECOND_MS] as const;
const AFTER_MORE_MS = 2 * MINUTE_MS;

/**
 * How long to wait before a forecast is asked for again [ms].
 *
 * @param failuresInRow questions without an answer since the last one that had one, or since the signal came back
 * @param askedSeconds how long whoever refused asked to be left alone; 0 where nothing was said
 */
export function pauseBeforeAsking(failuresInRow: number, askedSeconds: number): number {
  if (failuresInRow === 0) return ASK_EVERY_MS;
  const own = AFTER_FAILURES_MS[failuresInRow - 1] ?? AFTER_MORE_MS;
  return Math.max(own, askedSeconds * SECOND_MS);
}
