import { addMinutes, HOUR_MS, type Instant } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { isoUtc, localDate } from '@/lib/time/zone';
import { type HourRow, type HoursDraft, rowTime, withMoments } from './hours-draft';

/** One more hour at the start or the end. */
export function withHour(draft: HoursDraft, where: 'before' | 'after'): HoursDraft {
  const row = where === 'before' ? draft.rows[0] : draft.rows.at(-1);
  if (row === undefined) return draft;
  const at = addMinutes(rowTime(row), where === 'before' ? -60 : 60);
  return { ...draft, rows: withMoments(draft.rows, [isoUtc(at)]) };
}

/** A row at a clock time of the night; null where the clock never shows it. */
export function withClock(draft: HoursDraft, clock: string, zone: string): HoursDraft | null {
  const at = momentOf(draft.rows, clock, zone);
  return at === null ? null : { ...draft, rows: withMoments(draft.rows, [isoUtc(at)]) };
}

/** The moment of a clock time that lies in the night, or nearest to it. */
function momentOf(rows: readonly HourRow[], clock: string, zone: string): Instant | null {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return null;
  const [from, to] = [rowTime(first), rowTime(last)];
  const date = localDate(from, zone);
  const days = Array.from({ length: Math.ceil((to - from) / (24 * HOUR_MS)) + 3 }, (_, i) => i - 1);
  const moments = days.flatMap((day) => {
    const time = fromLocal(addDays(date, day) ?? date, clock, zone);
    if (!time.ok) return [];
    return [time.value.at, ...(time.value.doubled === null ? [] : [time.value.doubled.later])];
  });
  const away = (at: Instant): number => Math.max(from - at, at - to, 0);
  const nearest = [...moments].sort((a, b) => away(a) - away(b) || a - b)[0];
  return nearest ?? null;
}

export function withRow(draft: HoursDraft, at: string, change: Partial<HourRow>): HoursDraft {
  return { ...draft, rows: draft.rows.map((row) => (row.at === at ? { ...row, ...change } : row)) };
}

/** All typed hours emptied, their rows kept. */
export function withoutHours(draft: HoursDraft): HoursDraft {
  return {
    ...draft,
    rows: withMoments(
      [],
      draft.rows.map((row) => row.at),
    ),
  };
}
