import type { Instant } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';
import type { DayOrder } from './pasted';

/** A cell of a time or date column, taken apart. */
export type Moment = {
  /** Set where the cell says its offset. */
  readonly instant: Instant | null;
  /** 2027-01-16, or a slash date whose order is still open. */
  readonly date: string | { readonly first: number; readonly second: number; readonly year: number } | null;
  readonly clock: PastedClock | null;
};

/** `half`: null on the 24-hour clock. */
export type PastedClock = {
  readonly hour: number;
  readonly minute: number;
  readonly half: 'am' | 'pm' | null;
};

const TWELVE = /^(\d{1,2})(?:[:.h](\d{2}))?(?::\d{2})?\s*([ap])\.?\s?(?:m\.?)?$/i;
const TWENTY_FOUR = /^(\d{1,2})[:h](\d{2})(?::\d{2}(?:\.\d+)?)?$/i;
/** Only where the column is known to hold times: 18, 18h, 1800, 18.00. */
const BARE = /^(\d{1,2})(?:[h.]?|[.]?(\d{2}))$/i;

/** Longer than any date and time with their blanks. */
const LONGEST_MOMENT = 60;

const twoDigits = (value: number | string): string => String(value).padStart(2, '0');
const fullYear = (year: string): number => (year.length === 2 ? 2000 + Number(year) : Number(year));

function readClock(text: string, isTime: boolean): PastedClock | null {
  const twelve = TWELVE.exec(text);
  const match = twelve ?? TWENTY_FOUR.exec(text) ?? (isTime ? BARE.exec(text) : null);
  if (match === null) return null;
  const [hour, minute] = [Number(match[1]), Number(match[2] ?? 0)];
  const half = twelve === null ? null : twelve[3]?.toLowerCase() === 'a' ? 'am' : 'pm';
  const fits = half === null ? hour < 24 || (hour === 24 && minute === 0) : hour >= 1 && hour <= 12;
  return fits && minute < 60 ? { hour, minute, half } : null;
}

/** Date and clock of a cell; null where it is neither. `isTime`: the column is known to hold times. */
export function readMoment(cell: string, isTime: boolean): Moment | null {
  if (cell.length > LONGEST_MOMENT) return null;
  const text = cell.trim();
  const exact = readInstant(text.replace(/^(\d{4}-\d{2}-\d{2})\s+(?=\d{2}:)/, '$1T'));
  if (exact.ok) return { instant: exact.value, date: null, clock: null };
  const iso = /^(\d{4})-(\d{2})-(\d{2})(?:[T\s]\s*(.+))?$/i.exec(text);
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4}|\d{2})(?:[\s,]\s*(.+))?$/.exec(text);
  const slashed = /^(\d{1,2})\/(\d{1,2})\/(\d{4}|\d{2})(?:[\s,]\s*(.+))?$/.exec(text);
  const rest = (iso ?? dotted ?? slashed)?.[4];
  const clock =
    (iso ?? dotted ?? slashed)
      ? rest === undefined
        ? null
        : readClock(rest, isTime)
      : readClock(text, isTime);
  if (rest !== undefined && clock === null) return null;
  if (iso !== null) return { instant: null, date: `${iso[1]}-${iso[2]}-${iso[3]}`, clock };
  if (dotted !== null)
    return {
      instant: null,
      date: `${fullYear(dotted[3] ?? '')}-${twoDigits(dotted[2] ?? '')}-${twoDigits(dotted[1] ?? '')}`,
      clock,
    };
  if (slashed !== null)
    return {
      instant: null,
      date: { first: Number(slashed[1]), second: Number(slashed[2]), year: fullYear(slashed[3] ?? '') },
      clock,
    };
  return clock === null ? null : { instant: null, date: null, clock };
}

/** What the slash dates themselves say about their order: 'open' where nothing does, null where there are none. */
export function dayOrderOf(moments: readonly (Moment | null)[]): DayOrder | 'open' | null {
  const dates = moments.flatMap((moment) =>
    moment !== null && typeof moment.date === 'object' && moment.date !== null ? [moment.date] : [],
  );
  if (dates.length === 0) return null;
  const dayFirst = dates.some(({ first }) => first > 12);
  const monthFirst = dates.some(({ second }) => second > 12);
  if (dayFirst !== monthFirst) return dayFirst ? 'day-first' : 'month-first';
  return dates.every(({ first, second }) => first === second) ? 'day-first' : 'open';
}

export function isoDateOf(date: Moment['date'], order: DayOrder): string | null {
  if (date === null || typeof date === 'string') return date;
  const [day, month] = order === 'day-first' ? [date.first, date.second] : [date.second, date.first];
  return `${date.year}-${twoDigits(month)}-${twoDigits(day)}`;
}

/** Minutes since midnight. 12 AM is 0:00, 12 PM is 12:00, 24:00 is the end of the day. */
export function minutesOf({ hour, minute, half }: PastedClock): number {
  const hours = half === null ? hour : (hour % 12) + (half === 'pm' ? 12 : 0);
  return hours * 60 + minute;
}

export function pastedClockText(minutes: number): string {
  return `${twoDigits(Math.floor(minutes / 60))}:${twoDigits(minutes % 60)}`;
}
