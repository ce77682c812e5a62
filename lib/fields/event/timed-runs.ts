import { isSeen } from '@/lib/contract/name-text';
import { clockOf } from '@/lib/fields/clock-text';
import { type FieldReader, ifTyped } from '@/lib/fields/field-reader';
import { MOST_RUNS } from '@/lib/plan/judgement';
import type { Instant } from '@/lib/time/instant';
import { fromLocal, type LocalTime } from '@/lib/time/local';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import type { EventDraft, RunDraft } from './event-rows';
import { placeRuns, type RunProblem, seriesTimes } from './place-runs';

/** A run with its times, in the order it was typed. */
export type TimedRun = {
  /** The run of the opened event that this one was; null where it is new. */
  readonly from: number | null;
  readonly name: string;
  readonly start: Instant;
  readonly end: Instant;
  readonly weight: number;
  readonly typicalSeconds: number | undefined;
  /** The clock shows the start twice that night. */
  readonly doubled: boolean;
};

/** The runs as far as they can be read; complaints go to the fields. */
export function timedRuns(draft: EventDraft, reader: FieldReader): readonly TimedRun[] {
  const typical = ifTyped(draft.typicalSeconds, () =>
    reader.read('number', { name: 'typicalSeconds', text: draft.typicalSeconds, example: '6.4' }),
  );
  return draft.how === 'series' ? seriesRuns(draft, reader, typical) : listedRuns(draft, reader, typical);
}

function seriesRuns(
  { series, date, timezone, runs }: EventDraft,
  reader: FieldReader,
  typicalSeconds: number | undefined,
): readonly TimedRun[] {
  const number = (key: 'count' | 'every' | 'lasting', example: string): number | undefined =>
    reader.read('number', { name: `series.${key}`, text: series[key], example });
  const first = firstStart(series.first, { date, timezone }, reader);
  const [count, lasting] = [number('count', '8'), number('lasting', '6')];
  // One run has no distance to the next.
  const every = count === 1 && series.every.trim() === '' ? 0 : number('every', '25');
  const wholeCount = count !== undefined && Number.isInteger(count) && count >= 1 && count <= MOST_RUNS;
  if (count !== undefined && !wholeCount)
    reader.complain('series.count', `How many is a whole number from 1 to ${MOST_RUNS}.`);
  if (every !== undefined && every <= 0 && count !== 1)
    reader.complain('series.every', 'Type the minutes from one start to the next.');
  if (lasting !== undefined && (lasting <= 0 || lasting > 10_000))
    reader.complain('series.lasting', 'Type how many minutes a run takes.');
  if (first === undefined || count === undefined || lasting === undefined || every === undefined) return [];
  if (!wholeCount || lasting <= 0 || every < 0) return [];
  return seriesTimes({ first: first.at, every, count, lasting }).map(({ start, end }, i) => ({
    from: i < runs.length ? oldIndex(runs[i]) : null,
    name: `${isSeen(series.called) ? series.called.trim() : 'Run'} ${i + 1}`,
    start,
    end,
    weight: 1,
    typicalSeconds,
    doubled: i === 0 && first.doubled !== null,
  }));
}

function firstStart(
  text: string,
  { date, timezone }: Pick<EventDraft, 'date' | 'timezone'>,
  reader: FieldReader,
): LocalTime | undefined {
  const clock = clockOf(text);
  const time = fromLocal(date, clock ?? text.trim(), timezone);
  if (time.ok) return time.value;
  const field = { 'unknown-zone': 'timezone', 'not-a-date': 'date' } as const;
  const { code } = time.reason;
  const name = code === 'unknown-zone' || code === 'not-a-date' ? field[code] : 'series.first';
  reader.complain(name, sentenceFor({ field: 'start', problem: time.reason }, text));
  return undefined;
}

function listedRuns(draft: EventDraft, reader: FieldReader, shared: number | undefined): readonly TimedRun[] {
  if (draft.runs.length === 0) reader.complain('runs', 'Add at least one run.');
  return placeRuns(draft.runs, draft).flatMap((placed, i): readonly TimedRun[] => {
    const row = draft.runs[i];
    if (row === undefined) return [];
    if (!placed.ok) {
      const { field, problem } = placed.reason;
      const name =
        problem.code === 'unknown-zone'
          ? 'timezone'
          : problem.code === 'not-a-date'
            ? 'date'
            : `runs.${i}.${field}`;
      reader.complain(name, sentenceFor(placed.reason, field === 'start' ? row.start : row.end));
      return [];
    }
    const { start, end, doubled } = placed.value;
    const own = Number(row.typicalSeconds);
    return [
      {
        from: oldIndex(row),
        name: isSeen(row.name) ? row.name.trim() : `Run ${i + 1}`,
        start,
        end,
        weight: row.weight,
        typicalSeconds: shared ?? (own > 0 ? own : undefined),
        doubled: doubled && row.which === '',
      },
    ];
  });
}

function sentenceFor({ problem }: RunProblem, text: string): string {
  if (problem.code === 'no-end')
    return 'Type when it ends, such as 19:06 or 7:06 pm, or how long it takes, such as 6 min.';
  if (problem.code === 'ends-at-its-start') return 'This run ends when it starts. Check both times.';
  if (problem.code === 'not-a-clock' && text.trim() === '') return 'Type a time, such as 19:00 or 7 pm.';
  return clockProblemSentence(problem);
}

/** Which run of the opened event a row was. */
function oldIndex(row: RunDraft | undefined): number | null {
  const match = /^run-(\d+)$/.exec(row?.key ?? '');
  return match === null ? null : Number(match[1]);
}
