import type { Instant } from '@/lib/time/instant';

/** Why a text is no report that can be used. Sentences for these live in lib/words. */
export type MetarProblem =
  | { readonly code: 'empty' }
  /** It does not begin with a station and a day and time: KDLH 162255Z. */
  | { readonly code: 'no-report' }
  | { readonly code: 'several-reports' }
  /** No such day and time. */
  | { readonly code: 'no-such-time'; readonly group: string }
  | { readonly code: 'too-old'; readonly at: Instant }
  /** The station says that it has nothing to report. */
  | { readonly code: 'nil' }
  /** A group that no report has: a slip, or another kind of message. */
  | { readonly code: 'unknown-group'; readonly group: string }
  | { readonly code: 'no-temperature' }
  /** The same thing is told twice and differs. */
  | { readonly code: 'disagrees'; readonly group: string }
  | { readonly code: 'implausible'; readonly group: string };
