import type { DraftOf, ValuesOf } from '@/lib/fields/field-row';
import { blankDraft, blankOf } from '@/lib/fields/table-values';
import { type Instant, instant } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { HOUR, HOURS } from './hours-rows';

/** One hour as typed. */
export type HourRow = ValuesOf<typeof HOUR.rows> & {
  /** ISO 8601, UTC. */
  readonly at: string;
};

export type HoursDraft = DraftOf<typeof HOURS> & {
  /** In order of time, no time twice. */
  readonly rows: readonly HourRow[];
};

export const emptyRow = (at: string): HourRow => ({ ...blankOf(HOUR), at });

/** The shape of an hours' draft: one kept by an older version of the app does not have it and is left aside. */
export const HOURS_SHAPE: HoursDraft = {
  ...blankDraft(HOURS, METRIC_UNITS),
  rows: [emptyRow('2027-01-16T18:00:00Z')],
};

/** When a row is. */
export const rowTime = (row: HourRow): Instant => instant(Date.parse(row.at));

/** The rows with others added; a row of the same moment is replaced by the later one of the two lists. */
export function withRows(rows: readonly HourRow[], added: readonly HourRow[]): readonly HourRow[] {
  const byTime = new Map([...rows, ...added].map((row) => [rowTime(row), row]));
  return [...byTime.values()].sort((a, b) => rowTime(a) - rowTime(b));
}

/** The rows with empty ones for moments that have none yet. */
export function withMoments(rows: readonly HourRow[], moments: readonly string[]): readonly HourRow[] {
  return withRows(moments.map(emptyRow), rows);
}

export function isBlank(row: HourRow): boolean {
  return [row.temperature, row.humidity, row.pressure].every((text) => text.trim() === '');
}
