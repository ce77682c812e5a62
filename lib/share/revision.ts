import { addMinutes, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';

/** How often a live answer is made anew; a forecast is fresh for as long. */
export const REVISION_MINUTES = 15;

/** The quarter of an hour a moment lies in. */
export function quarterHour(at: Instant): Instant {
  const step = REVISION_MINUTES * MINUTE_MS;
  return instant(Math.floor(at / step) * step);
}

/**
 * The number of a revision: quarter hours since 1970. A forecast's own issue time would fall whenever an instance with
 * an older copy answers after one with a newer; all instances share the clock, no issue time lies after it, and it
 * never falls.
 */
export function revisionNumber(at: Instant): number {
  return Math.floor(at / (REVISION_MINUTES * MINUTE_MS));
}

/** From this moment on a run counts as decided: it is too late to fit anything else for it. */
export function settledAt(run: { readonly start: Instant }, swapMinutes: number): Instant {
  return addMinutes(run.start, -swapMinutes);
}
