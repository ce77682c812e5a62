import { clockOf, runEndOf } from '@/lib/fields/clock-text';
import { fail, ok, type Result } from '@/lib/result/result';
import { addMinutes, HOUR_MS, type Instant } from '@/lib/time/instant';
import { addDays, type ClockProblem, fromLocal, type LocalTime } from '@/lib/time/local';
import type { EventDraft, RunDraft } from './event-rows';

/** When a typed run is; `doubled`: the clock shows its start twice that night. */
export type PlacedRun = {
  readonly row: RunDraft;
  readonly start: Instant;
  readonly end: Instant;
  /** Days after the event's date. */
  readonly day: number;
  readonly doubled: boolean;
};

export type RunProblem =
  | { readonly field: 'start' | 'end'; readonly problem: ClockProblem }
  | {
      readonly field: 'end';
      readonly problem: { readonly code: 'no-end' } | { readonly code: 'ends-at-its-start' };
    };

/** A start this much earlier than the run before is a new day; less is a run out of order. */
const NEW_DAY_MS = 6 * HOUR_MS;
/** Days a list can reach by itself. */
const MOST_DAYS = 14;

type Zoned = Pick<EventDraft, 'date' | 'timezone'>;
type Start = { readonly at: Instant; readonly day: number; readonly doubled: boolean };

/** Which of the two moments that a doubled clock time can be. */
function oneOf(time: LocalTime, which: RunDraft['which'], before: Instant | null): Instant {
  if (time.doubled === null || which === 'first') return time.at;
  const { later } = time.doubled;
  if (which === 'second') return later;
  return before !== null && time.at < before && later >= before ? later : time.at;
}

/** The start of a run; with no day typed, the first on which it is not long before the run before it. */
function startOf(
  row: RunDraft,
  { date, timezone }: Zoned,
  before: Instant | null,
): Result<Start, ClockProblem> {
  const clock = clockOf(row.start);
  if (clock === null) return fail({ code: 'not-a-clock', text: row.start.trim() });
  const days = row.day === '' ? Array.from({ length: MOST_DAYS }, (_, i) => i) : [Number(row.day)];
  let problem: ClockProblem = { code: 'not-a-clock', text: row.start.trim() };
  for (const day of days) {
    const time = fromLocal(addDays(date, day) ?? date, clock, timezone);
    if (time.ok) {
      const at = oneOf(time.value, row.which, before);
      if (row.day !== '' || before === null || at > before - NEW_DAY_MS)
        return ok({ at, day, doubled: time.value.doubled !== null });
    } else {
      problem = time.reason;
      // An hour the clocks jump over is the person's to mend, not to be moved to another day.
      if (before === null || problem.code !== 'missing-hour') return fail(problem);
      if (problem.change.at > before - NEW_DAY_MS) return fail(problem);
    }
  }
  return fail(problem);
}

/** The end of a run that starts at `start`: so many minutes later, or the next time the clock shows it. */
function endOf(row: RunDraft, start: Start, { date, timezone }: Zoned): Result<Instant, RunProblem> {
  const end = runEndOf(row.end);
  if (end === null)
    return fail(
      row.end.trim() === ''
        ? { field: 'end', problem: { code: 'no-end' } }
        : { field: 'end', problem: { code: 'not-a-clock', text: row.end.trim() } },
    );
  if ('minutes' in end) return ok(addMinutes(start.at, end.minutes));
  if (end.clock === clockOf(row.start) && !start.doubled)
    return fail({ field: 'end', problem: { code: 'ends-at-its-start' } });
  for (const day of [start.day, start.day + 1]) {
    const time = fromLocal(addDays(date, day) ?? date, end.clock, timezone);
    if (!time.ok) return fail({ field: 'end', problem: time.reason });
    const moments = [time.value.at, ...(time.value.doubled === null ? [] : [time.value.doubled.later])];
    const next = moments.find((at) => at > start.at);
    if (next !== undefined) return ok(next);
  }
  return fail({ field: 'end', problem: { code: 'ends-at-its-start' } });
}

/** Every typed run, each placed after the one before it, in the order of the rows. */
export function placeRuns(rows: readonly RunDraft[], zoned: Zoned): readonly Result<PlacedRun, RunProblem>[] {
  let before: Instant | null = null;
  return rows.map((row) => {
    const start = startOf(row, zoned, before);
    if (!start.ok) return fail<RunProblem>({ field: 'start', problem: start.reason });
    before = start.value.at;
    const end = endOf(row, start.value, zoned);
    if (!end.ok) return end;
    const { at, day, doubled } = start.value;
    return ok({ row, start: at, end: end.value, day, doubled });
  });
}

/** "First at 19:00, every 25 min, 8 of them, each lasting 6 min", counted in real minutes across any clock change. */
export type Series = {
  readonly first: Instant;
  readonly every: number;
  readonly count: number;
  readonly lasting: number;
};

export function seriesTimes({ first, every, count, lasting }: Series): readonly {
  readonly start: Instant;
  readonly end: Instant;
}[] {
  return Array.from({ length: count }, (_, i) => {
    const start = addMinutes(first, i * every);
    return { start, end: addMinutes(start, lasting) };
  });
}
