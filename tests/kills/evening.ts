import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { POSTED_AT } from '@/tests/support/board-forecast';

/** A mild evening whose forecast turns 4 K colder after an hour and 9 K after two and a half. */
export function evening(now: Instant) {
  const minutes = (now - POSTED_AT) / MINUTE_MS;
  return {
    degreesAt: () => -8,
    colder: minutes < 60 ? 0 : minutes < 150 ? 4 : 9,
    madeAt: instant(POSTED_AT + Math.floor((now - POSTED_AT) / HOUR_MS) * HOUR_MS),
  };
}

/** From the first posting to after the last round. */
export const EVENING_MINUTES = 330;
/** Boards are posted one after the other in so many minutes. */
export const POSTING_MINUTES = 15;
