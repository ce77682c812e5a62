/** How long anything may take. Judgement: a person at the track waits nine seconds at most, and rarely three. */
export type Timings = {
  /** One request, from the first byte sent to the last byte read [ms]. */
  readonly attemptMs: number;
  /** All services together [ms]. */
  readonly totalMs: number;
  /** A service silent for this long gets company: the next one is asked as well [ms]. */
  readonly hedgeMs: number;
  /** With a last good copy at hand nobody waits longer than this for a newer one [ms]. */
  readonly staleGraceMs: number;
  /** How long a forecast waits for the spread of the ensemble [ms]. */
  readonly spreadGraceMs: number;
  /** Before the one retry: at least this long [ms] ... */
  readonly retryLeastMs: number;
  /** ... and at most this long; a service that asks for more is left alone instead [ms]. */
  readonly retryMostMs: number;
};

export const TIMINGS: Timings = {
  attemptMs: 4000,
  totalMs: 8000,
  hedgeMs: 2000,
  staleGraceMs: 3500,
  spreadGraceMs: 1200,
  retryLeastMs: 250,
  retryMostMs: 1500,
};

/** No honest answer is larger [bytes, after decompression]. */
export const MOST_BYTES = 2_000_000;
