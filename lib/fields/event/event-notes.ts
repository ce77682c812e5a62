import { fieldReader } from '@/lib/fields/field-reader';
import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import { clockChange } from '@/lib/time/local';
import type { ClockZone } from '@/lib/time/zone';
import { clockChangeNote } from '@/lib/words/clock-problems';
import { listing } from '@/lib/words/listing';
import { clockText } from '@/lib/words/times';
import type { EventDraft } from './event-rows';
import { type TimedRun, timedRuns } from './timed-runs';

/** Things to know about the runs as typed; none of them keeps the event from being saved. */
export type EventNotes = {
  readonly runs: readonly TimedRun[];
  readonly notes: readonly string[];
};

/** @param zone the event's zone, with the clock its times are told on */
export function eventNotes(draft: EventDraft, zone: ClockZone = draft.timezone): EventNotes {
  const typed = timedRuns(draft, fieldReader(draft.units));
  const runs = [...typed].sort((a, b) => a.start - b.start);
  return {
    runs,
    notes: [
      ...orderNotes(typed, runs),
      ...overlapNotes(runs, zone),
      ...gapNotes(runs, draft),
      ...clockNotes(runs, draft),
    ],
  };
}

function orderNotes(typed: readonly TimedRun[], sorted: readonly TimedRun[]): readonly string[] {
  const moved = typed.some((run, i) => run !== sorted[i]);
  return moved ? ['The runs were not in order of time. They are sorted by their start when you save.'] : [];
}

type Pair = { readonly before: TimedRun; readonly run: TimedRun };

const pairsOf = (runs: readonly TimedRun[]): readonly Pair[] =>
  runs.slice(1).map((run, i) => ({ before: runs[i] ?? run, run }));

function overlapNotes(runs: readonly TimedRun[], zone: ClockZone): readonly string[] {
  const clock = (at: Instant): string => clockText(at, { zone });
  return pairsOf(runs)
    .filter(({ before, run }) => run.start < before.end)
    .map(
      ({ before, run }) =>
        `${run.name} starts at ${clock(run.start)}, before ${before.name} ends at ${clock(before.end)}. Check both times.`,
    );
}

/** Pairs of runs too close together to swap jets between; named while they are few. */
function gapNotes(runs: readonly TimedRun[], { ride, swapMinutes }: EventDraft): readonly string[] {
  const minutes = Number(swapMinutes);
  const tight = pairsOf(runs).filter(
    ({ before, run }) => run.start >= before.end && run.start - before.end < minutes * MINUTE_MS,
  );
  if (ride || tight.length === 0) return [];
  const where = pairWords(tight, runs.length - 1);
  return [`There are fewer than ${swapMinutes.trim()} minutes between ${where}: no time to swap jets there.`];
}

function pairWords(tight: readonly Pair[], pairs: number): string {
  const [only] = tight;
  if (tight.length === pairs && pairs > 1) return 'any two runs';
  if (tight.length === 1 && only !== undefined) return `${only.before.name} and ${only.run.name}`;
  return `${tight.length} of the ${pairs} pairs of runs`;
}

function clockNotes(runs: readonly TimedRun[], { timezone, how }: EventDraft): readonly string[] {
  const [first, last] = [runs[0], runs.at(-1)];
  if (first === undefined || last === undefined) return [];
  const change = clockChange(first.start, last.end, timezone);
  const doubled = runs.filter((run) => run.doubled).map((run) => run.name);
  const which =
    how === 'series'
      ? 'The clock shows the first start twice that night; the earlier moment is taken. Edit the runs one by one to choose.'
      : `${listing(doubled)}: the clock shows this time twice that night. Say beside the run which one is meant.`;
  return [
    ...(change === null ? [] : [clockChangeNote(change, timezone)]),
    ...(doubled.length === 0 ? [] : [which]),
  ];
}
