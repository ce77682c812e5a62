import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { clockFace, type HourStyle, localClock, localDate } from '@/lib/time/zone';
import { numberText } from '@/lib/units/entry-text';
import type { RunDraft } from './event-rows';
import { placeRuns } from './place-runs';

/** A run to be edited as a row. */
export type RowRun = Pick<RunDraft, 'key' | 'name' | 'weight' | 'typicalSeconds'> & {
  readonly start: Instant;
  readonly end: Instant;
};

type Zoned = { readonly date: string; readonly timezone: string; readonly hours: HourStyle };

/** Rows that read back as these runs; their days are left to the order of the clock times where that says them. */
export function runRows(runs: readonly RowRun[], zoned: Zoned): readonly RunDraft[] {
  const rows = runs.map((run) => runRow(run, zoned));
  const plain = rows.map((row) => ({ ...row, day: '' }));
  const placed = placeRuns(plain, zoned);
  const same = rows.every((row, i) => {
    const run = placed[i];
    return run?.ok === true && String(run.value.day) === row.day;
  });
  return same ? plain : rows;
}

const DAY_MS = 24 * 60 * MINUTE_MS;

function runRow({ start, end, ...rest }: RowRun, { date, timezone, hours }: Zoned): RunDraft {
  const [clock, endClock] = [localClock(start, timezone), localClock(end, timezone)];
  const startDate = localDate(start, timezone);
  const typed = fromLocal(startDate, clock, timezone);
  const doubled = typed.ok ? typed.value.doubled : null;
  const typedEnd = fromLocal(localDate(end, timezone), endClock, timezone);
  const plainEnd = typedEnd.ok && typedEnd.value.doubled === null && end - start < DAY_MS;
  return {
    ...rest,
    day: String(daysBetween(date, startDate)),
    start: clockFace(clock, hours),
    which: doubled === null ? '' : start >= doubled.later ? 'second' : 'first',
    end: plainEnd ? clockFace(endClock, hours) : `${numberText((end - start) / MINUTE_MS)} min`,
  };
}

/** Most days a list of runs reaches; nobody races longer without a new event. */
const MOST_DAYS = 60;

function daysBetween(from: string, to: string): number {
  const days = Array.from({ length: MOST_DAYS }, (_, i) => addDays(from, i));
  return Math.max(0, days.indexOf(to));
}
