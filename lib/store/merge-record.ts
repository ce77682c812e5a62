import { type Leaves, leavesOf, valueOfLeaves } from './leaves';
import { type FieldChange, mergeLeaves, type Traced } from './merge-leaves';
import { type EventRecord, TABLE_SCHEMA, type TableName, type TableValue } from './records';
import { type RunsOfNight, renumberedRuns } from './renumbered-runs';
import { knows, markOf } from './trace';
import { NO_TRACE, type Trace } from './trace-schema';

export type RecordSide<T extends TableName> = {
  readonly value: TableValue[T];
  readonly trace?: Trace | undefined;
};

export type MergedRecord<T extends TableName> = {
  readonly value: TableValue[T];
  readonly trace: Trace;
  readonly changes: readonly FieldChange[];
};

/** Merges what the other side knows of a record into it. `covers` is as for `mergeLeaves`. */
export function mergeRecord<T extends TableName>(
  table: T,
  here: RecordSide<T>,
  there: RecordSide<T>,
  covers?: (path: string) => boolean,
): MergedRecord<T> {
  if (table === 'forecasts' || table === 'preferences' || (isInvented(here) && isInvented(there)))
    return wholeRecord(table, here, there);
  const [mine, theirs, gone] = inOneCount(table, tracedOf(table, here), tracedOf(table, there), covers);
  const merged = mergeLeaves(mine, theirs, covers);
  const changes = [...merged.changes, ...gone];
  const { trace = NO_TRACE } = here;
  if (changes.length === 0 && sameSeen(merged.trace, trace)) return { value: here.value, trace, changes };
  const parsed = TABLE_SCHEMA[table].safeParse(inOrder(table, valueOfLeaves(table, merged.leaves)));
  // Two halves that make no record: what is here stays, and all of the other goes aside.
  if (!parsed.success)
    return {
      value: here.value,
      trace,
      changes: [{ path: '', how: 'kept', here: here.value, there: there.value }],
    };
  // Nothing comes in: the record keeps its own order, too. Otherwise it was parsed by the schema of its table.
  const value = changes.every(({ how }) => how === 'kept') ? here.value : (parsed.data as TableValue[T]);
  return { value, trace: merged.trace, changes };
}

const sameSeen = (joined: Trace, { seen }: Trace): boolean =>
  Object.entries(joined.seen).every(([by, at]) => seen[by] === at);

const tracedOf = <T extends TableName>(table: T, { value, trace = NO_TRACE }: RecordSide<T>): Traced => ({
  leaves: leavesOf(table, value),
  trace,
});

/** The night that every device shows before it has one of its own. */
export const isInvented = <T extends TableName>({ value }: Pick<RecordSide<T>, 'value'>): boolean =>
  'demo' in value && value.demo;

/** Of a forecast the one issued later, by its service. Settings and the invented night are a device's own, and stay. */
function wholeRecord<T extends TableName>(
  table: T,
  here: RecordSide<T>,
  there: RecordSide<T>,
): MergedRecord<T> {
  const issued = ({ value }: RecordSide<T>): number =>
    'forecast' in value ? Date.parse(value.forecast.issuedAt ?? value.forecast.fetchedAt ?? '') : 0;
  const later = table === 'forecasts' && issued(there) > issued(here);
  return {
    value: later ? there.value : here.value,
    trace: (later ? there.trace : here.trace) ?? NO_TRACE,
    changes: later ? [{ path: '', how: 'changed', here: here.value, there: there.value }] : [],
  };
}

const OF_RUNS = /^(event\/runs|club\/.*)$/;

/** Both sides with the runs of the night counted as they will stand, and what was said of runs that will not be there. */
function inOneCount(
  table: TableName,
  here: Traced,
  there: Traced,
  covers: (path: string) => boolean = () => true,
): readonly [Traced, Traced, readonly FieldChange[]] {
  if (table !== 'events') return [here, there, []];
  const merged = runsOf(mergeLeaves(here, there, (path) => OF_RUNS.test(path) && covers(path)).leaves);
  const mine = renumberedRuns(here, runsOf(here.leaves), merged);
  const theirs = renumberedRuns(there, runsOf(there.leaves), merged);
  const gone = [
    ...[...mine.gone].map(([path, value]): FieldChange => ({ path, how: 'removed', here: value })),
    ...[...theirs.gone]
      .filter(([path, value]) => covers(path) && !knows(here.trace, markOf(there.trace, path, value)))
      .map(([path, value]): FieldChange => ({ path, how: 'kept', there: value })),
  ];
  return [mine, theirs, gone];
}

const NOBODY: NonNullable<RunsOfNight['club']> = { classes: [], racers: {} };

function runsOf(leaves: Leaves): RunsOfNight {
  // Taken apart a moment ago from a record that was parsed.
  const { event, club } = valueOfLeaves('events', leaves) as RunsOfNight;
  return { event, club: { ...NOBODY, ...club } };
}

/** What was said of what is in stands oldest first, what was made in the order of the runs. */
function inOrder(table: TableName, value: unknown): unknown {
  if (table !== 'events') return value;
  const { fittings, made } = value as Partial<EventRecord>;
  const sorted = <E>(all: Record<string, E[]>, by: (each: E) => number): Record<string, E[]> =>
    Object.fromEntries(
      Object.entries(all).map(([key, list]) => [key, [...list].sort((a, b) => by(a) - by(b))]),
    );
  return {
    ...(value as Partial<EventRecord>),
    ...(fittings === undefined ? {} : { fittings: sorted(fittings, ({ at }) => Date.parse(at)) }),
    ...(made === undefined ? {} : { made: sorted(made, ({ run }) => run) }),
  };
}
