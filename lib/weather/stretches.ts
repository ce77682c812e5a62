import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { addDays } from '@/lib/time/local';
import { localDate } from '@/lib/time/zone';
import type { DateStretch } from './past';

/** The archive is about five days behind; a week is safe. */
const ARCHIVE_BEHIND_MS = 7 * 24 * HOUR_MS;

/**
 * The last so many occurrences of each run of neighbouring months, whole and already in the archive, oldest first:
 * December to February is one stretch across New Year, not three.
 */
export function pastStretches(
  months: readonly number[],
  years: number,
  now: Instant,
): readonly DateStretch[] {
  const latest = localDate(instant(now - ARCHIVE_BEHIND_MS), 'UTC');
  const thisYear = Number(latest.slice(0, 4));
  return monthRuns(months)
    .flatMap((run) => {
      const starts = Array.from({ length: years + 2 }, (_, i) => thisYear - i);
      return starts
        .map((year) => stretch(year, run))
        .filter(({ to }) => to <= latest)
        .slice(0, years);
    })
    .sort((a, b) => a.from.localeCompare(b.from));
}

type MonthRun = { readonly first: number; readonly length: number };

/** Months of the year in runs of neighbours; December and January are neighbours. */
export function monthRuns(months: readonly number[]): readonly MonthRun[] {
  const wanted = new Set(months);
  if (wanted.size === 12) return [{ first: 1, length: 12 }];
  const before = (month: number): number => ((month + 10) % 12) + 1;
  const after = (month: number): number => (month % 12) + 1;
  return [...wanted]
    .filter((month) => !wanted.has(before(month)))
    .sort((a, b) => a - b)
    .map((first) => {
      let length = 1;
      for (let month = after(first); wanted.has(month); month = after(month)) length += 1;
      return { first, length };
    });
}

function stretch(year: number, { first, length }: MonthRun): DateStretch {
  const past = first - 1 + length;
  const firstAfter = monthDate(year + Math.floor(past / 12), (past % 12) + 1);
  // A first of a month is always a date.
  return { from: monthDate(year, first), to: addDays(firstAfter, -1) ?? firstAfter };
}

function monthDate(year: number, month: number): string {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-01`;
}
