import { fail, ok, type Result } from '@/lib/result/result';
import { keyOf } from './backing';
import { TABLE_SCHEMA, TABLES, type TableName } from './records';
import { removalTravels } from './removal';
import type { RemovedRecord } from './removed-record';
import { byPlace, idSchema, issuesOf, type Row, storedOf } from './row';
import { emptied, removedRow, rowOf, type WriteStamp } from './rules';
import { sameValue } from './same-value';
import type { Snapshot, SnapshotValues, StoreProblem } from './store-type';
import type { Trace } from './trace-schema';

/** All records of all tables as the app sees them, and which were removed. */
export function snapshotOf(rows: readonly Row[]): Snapshot {
  const sorted = [...rows].sort(byPlace);
  const entries = TABLES.map((table) => [
    table,
    sorted.filter((row) => row.table === table).flatMap((row) => storedOf(row) ?? []),
  ]);
  // Every table is in TABLES, so every key of a snapshot is there.
  return { ...Object.fromEntries(entries), removed: removedOf(rows) } as Snapshot;
}

const removedOf = (rows: readonly Row[]): readonly RemovedRecord[] =>
  rows.flatMap(({ table, id, removed, trace }) =>
    removed && trace?.from !== undefined && removalTravels(table) ? [{ table, id, trace }] : [],
  );

type Wanted = {
  readonly table: TableName;
  readonly id: string;
  readonly value: unknown;
  readonly updatedAt: string | undefined;
  readonly trace: Trace | undefined;
};

function wantedRows(values: SnapshotValues): Result<readonly Wanted[], StoreProblem<never>> {
  const wanted: Wanted[] = [];
  for (const table of TABLES)
    for (const entry of values[table]) {
      const id = idSchema.safeParse(entry.id);
      const value = TABLE_SCHEMA[table].safeParse(entry.value);
      if (!id.success) return fail({ code: 'invalid', issues: issuesOf(id.error, [table, 'id']) });
      if (!value.success) return fail({ code: 'invalid', issues: issuesOf(value.error, [table, entry.id]) });
      wanted.push({ table, id: entry.id, value: value.data, updatedAt: entry.updatedAt, trace: entry.trace });
    }
  return ok(wanted);
}

/** The rows to write so that `values` stand and nothing else does. Equal records keep their revision. */
export function rowsFor(
  current: readonly Row[],
  values: SnapshotValues,
  clock: WriteStamp,
): Result<readonly Row[], StoreProblem<never>> {
  const wanted = wantedRows(values);
  if (!wanted.ok) return wanted;
  const kept = new Set(wanted.value.map(keyOf));
  const before = new Map(current.map((row) => [keyOf(row), row]));
  const written = wanted.value.flatMap(({ table, id, value, updatedAt, trace }, i): Row[] => {
    const row = before.get(keyOf({ table, id })) ?? null;
    const same = row !== null && !row.removed && sameValue(row.value, value);
    // A trace that is handed in is of a merge or a way back; the very one that stands here came along with its record.
    const given = trace === undefined || trace === row?.trace ? null : trace;
    if (same && (given === null || sameValue(given, row.trace))) return [];
    const made = rowOf(row, { table, id, value }, { ...clock, order: clock.order + i });
    return [{ ...made, updatedAt: updatedAt ?? made.updatedAt, trace: given ?? made.trace }];
  });
  const away = (row: { readonly table: TableName; readonly id: string }) => !kept.has(keyOf(row));
  return ok([...rowsRemoved(current.filter(away), (values.removed ?? []).filter(away), clock), ...written]);
}

/** The rows of records that do not stand, where one of them was another before; `told` is as in `SnapshotValues`. */
function rowsRemoved(
  current: readonly Row[],
  told: readonly RemovedRecord[],
  clock: WriteStamp,
): readonly Row[] {
  const traces = new Map(told.map((removed) => [keyOf(removed), removed.trace]));
  const here = new Set(current.map(keyOf));
  const { order, updatedAt } = clock;
  const places = told
    .filter((removed) => !here.has(keyOf(removed)))
    .map((removed): Row => ({ ...removed, order, revision: 1, updatedAt, removed: true, value: null }));
  const gone = current.flatMap((row): Row[] => {
    const trace = traces.get(keyOf(row));
    if (trace === undefined) return row.removed ? [] : [removedRow(row, clock)];
    return row.removed && sameValue(trace, row.trace) ? [] : [{ ...emptied(row, clock), trace }];
  });
  return [...gone, ...places];
}
