import { appendFileSync } from 'node:fs';

/** One line of the table that `npm run bench` ends with. */
export type Outcome = {
  readonly what: string;
  readonly ours: string;
  /** Who else did the same in the same run, and what they took. */
  readonly peer: string;
  /** Ours against the peer. */
  readonly ratio: string;
  /** What was wanted, and whether it was reached; null where a figure is only shown. */
  readonly wanted: { readonly goal: string; readonly met: boolean } | null;
};

/** Prints an outcome at once and hands it to the table; a goal that was missed fails the run. */
export function tell(outcome: Outcome): void {
  const { what, ours, peer, ratio, wanted } = outcome;
  const verdict = wanted === null ? '' : ` (wanted: ${wanted.goal}; ${wanted.met ? 'met' : 'MISSED'})`;
  console.log(`${what}: ${ours}; ${peer}; ${ratio}${verdict}`);
  if (wanted?.met === false) process.exitCode = 1;
  const table = process.env.BENCH_OUTCOMES;
  if (table !== undefined) appendFileSync(table, `${JSON.stringify(outcome)}\n`);
}

/** Milliseconds as they are told: small ones to two places, the smallest in microseconds. */
export function ms(value: number): string {
  if (value < 0.1) return `${(value * 1000).toFixed(value < 0.01 ? 1 : 0)} µs`;
  return `${value.toFixed(value < 10 ? 2 : 0)} ms`;
}

/** How many times, with as many digits as it deserves. */
export function times(value: number): string {
  return `${value < 10 ? value.toFixed(2) : Math.round(value).toLocaleString('en')} x`;
}

/** The middle one of what was measured; of an even number the upper of the two. */
export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
