declare const unit: unique symbol;

/** A moment in time: milliseconds since 1970-01-01T00:00Z, no zone attached. */
export type Instant = number & { readonly [unit]: 'instant' };

export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;

/** The last instant a JavaScript date can name (ECMA-262, "Time Values and Time Range"). */
const LIMIT_MS = 8.64e15;

export function instant(epochMs: number): Instant {
  if (!Number.isFinite(epochMs) || Math.abs(epochMs) > LIMIT_MS)
    throw new RangeError(`not an instant: ${epochMs}`);
  return epochMs as Instant;
}

/** Half a minute: how often what a page shows follows the clock. */
const STEP_MS = 30_000;

/** The clock as a page shows it, the same for the whole of a step. */
export function clockStep(epochMs: number): Instant {
  return instant(Math.floor(epochMs / STEP_MS) * STEP_MS);
}

export function addMinutes(at: Instant, minutes: number): Instant {
  return instant(at + minutes * MINUTE_MS);
}
