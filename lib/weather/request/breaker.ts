import { type Instant, instant } from '@/lib/time/instant';

/** What is known of a service's health: how often it failed in a row, and until when it is left alone. */
export type Breaker = {
  readonly failures: number;
  readonly restingUntil: Instant | null;
  /** True where the service itself asked for the rest. */
  readonly asked: boolean;
};

export const HEALTHY: Breaker = { failures: 0, restingUntil: null, asked: false };

/** Three failures in a row are an outage, not bad luck. */
const FAILURES_TO_REST = 3;
const FIRST_REST_MS = 30_000;
const LONGEST_REST_MS = 300_000;

/** The breaker after one more failure: 30 s of rest after the third, doubling to 5 min. */
export function afterFailure(breaker: Breaker, now: Instant): Breaker {
  const failures = breaker.failures + 1;
  if (failures < FAILURES_TO_REST) return { ...breaker, failures };
  const rest = Math.min(FIRST_REST_MS * 2 ** (failures - FAILURES_TO_REST), LONGEST_REST_MS);
  return { failures, restingUntil: instant(now + rest), asked: false };
}

/** The breaker after the service asked to be left alone. */
export function afterAskedRest(breaker: Breaker, until: Instant): Breaker {
  return { failures: breaker.failures, restingUntil: until, asked: true };
}

export function isResting(breaker: Breaker, now: Instant): breaker is Breaker & { restingUntil: Instant } {
  return breaker.restingUntil !== null && now < breaker.restingUntil;
}
