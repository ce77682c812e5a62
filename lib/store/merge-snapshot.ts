import type { FieldChange } from './merge-leaves';
import { isQuiet, mergeRecord, type RecordSide } from './merge-record';
import { TABLES, type TableName, type TableValue } from './records';
import type { SetAside } from './set-aside-record';
import type { SnapshotValues } from './store-type';
import { crcOf } from './trace';
import { NO_TRACE, type Trace } from './trace-schema';

/** A record from elsewhere. */
export type IncomingRecord<T extends TableName> = RecordSide<T> & {
  readonly id: string;
  readonly updatedAt?: string;
  /** Which of its fields it speaks of. Absent: of all. */
  readonly covers?: (path: string) => boolean;
};

/** Records from elsewhere, as a file or a link has them. */
export type Incoming = {
  /** What a person calls the file or the link. */
  readonly name: string;
  readonly tables: { readonly [T in TableName]?: readonly IncomingRecord<T>[] };
  /** What was set aside there. */
  readonly setAside: readonly SetAside[];
};

/** What a merge does to one record. */
export type RecordChange = {
  readonly table: TableName;
  readonly id: string;
  /** The record as it stands after the merge. */
  readonly value: TableValue[TableName];
  /** It was not here before: then no fields are named. */
  readonly isNew: boolean;
  readonly fields: readonly FieldChange[];
};

export type MergedSnapshot = { readonly values: SnapshotValues; readonly changes: readonly RecordChange[] };

/** Both sides in one: what is only on one of them stays, and what both changed is set aside where it loses. */
export function mergedSnapshot(current: SnapshotValues, incoming: Incoming): MergedSnapshot {
  const changes: RecordChange[] = [];
  const entries = TABLES.map((table) => [table, mergedTable(table, current[table], incoming, changes)]);
  const setAside = [
    ...incoming.setAside,
    ...changes.flatMap((change) =>
      change.fields.flatMap((field) => asideOfField(change, field, incoming.name)),
    ),
  ];
  // Every table is in TABLES, so every key of a snapshot is there.
  return { values: { ...(Object.fromEntries(entries) as SnapshotValues), setAside }, changes };
}

function mergedTable<T extends TableName>(
  table: T,
  here: readonly IncomingRecord<T>[],
  incoming: Incoming,
  changes: RecordChange[],
): SnapshotValues[T] {
  const theirs: readonly IncomingRecord<T>[] = incoming.tables[table] ?? [];
  const known = new Map(here.map((entry) => [entry.id, entry]));
  const merged = theirs.map((entry): Entry<T> => {
    const { id, updatedAt, value, trace = NO_TRACE, covers } = entry;
    const mine = known.get(id);
    if (mine === undefined) {
      changes.push({ table, id, value, isNew: true, fields: [] });
      return { id, value, trace, ...(updatedAt === undefined ? {} : { updatedAt }) };
    }
    const { changes: fields, ...record } = mergeRecord(table, mine, entry, covers);
    if (fields.length > 0) changes.push({ table, id, value: record.value, isNew: false, fields });
    return { id, ...(mine.updatedAt === undefined ? {} : { updatedAt: mine.updatedAt }), ...record };
  });
  const ids = new Set(merged.map(({ id }) => id));
  return [...here.filter(({ id }) => !ids.has(id)), ...merged] as SnapshotValues[T];
}

type Entry<T extends TableName> = {
  readonly id: string;
  readonly value: TableValue[T];
  readonly trace: Trace;
  readonly updatedAt?: string;
};

const LOSER = { kept: 'there', taken: 'here', removed: 'here', added: null, changed: null } as const;

function asideOfField({ table, id }: RecordChange, field: FieldChange, name: string): readonly SetAside[] {
  const side = LOSER[field.how];
  if (side === null || isQuiet(field)) return [];
  const value = field[side];
  const key = `${table}/${id}/${field.path}/${crcOf(field.path, value)}`;
  const text = JSON.stringify(value, null, 1);
  return [{ key, why: 'merged', table, id, text, issues: [], path: field.path, from: { name, side } }];
}
