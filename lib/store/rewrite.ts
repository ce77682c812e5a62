import { fail, ok, type Result } from '@/lib/result/result';
import { TABLE_SCHEMA, TABLES, type TableName } from './records';
import { byPlace, idSchema, issuesOf, type Row, storedOf } from './row';
import { emptied, rowOf, type WriteStamp } from './rules';
import { sameValue } from './same-value';
import type { Snapshot, SnapshotValues, StoreProblem } from './store-type';
import type { Trace } from './trace-schema';

/** All records of all tables as the app sees them. */
export function snapshotOf(rows: readonly Row[]): Snapshot {
  const sorted = [...rows].sort(byPlace);
  const entries = TABLES.map((table) => [
    table,
    sorted.filter((row) => row.table === table).flatMap((row) => storedOf(row) ?? []),
  ]);
  // Every table is in TABLES, so every key of a snapshot is there.
  return Object.fromEntries(entries) as Snapshot;
}

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
  const kept = new Set(wanted.value.map(({ table, id }) => `${table}/${id}`));
  const before = new Map(current.map((row) => [`${row.table}/${row.id}`, row]));
  const gone = current.filter((row) => !row.removed && !kept.has(`${row.table}/${row.id}`));
  const written = wanted.value.flatMap(({ table, id, value, updatedAt, trace }, i): Row[] => {
    const row = before.get(`${table}/${id}`) ?? null;
    const same = row !== null && !row.removed && sameValue(row.value, value);
    // A trace that is handed in is of a merge or a way back; the very one that stands here came along with its record.
    const told = trace === undefined || trace === row?.trace ? null : trace;
    if (same && (told === null || sameValue(told, row.trace))) return [];
    const made = rowOf(row, { table, id, value }, { ...clock, order: clock.order + i });
    return [{ ...made, updatedAt: updatedAt ?? made.updatedAt, trace: told ?? made.trace }];
  });
  return ok([...gone.map((row) => emptied(row, clock)), ...written]);
}
