import type { FieldChange } from './merge-leaves';
import { isInvented, mergeRecord, type RecordSide } from './merge-record';
import { isQuiet } from './quiet';
import { TABLES, type TableName, type TableValue } from './records';
import { joinedRemoval, knowsRemoval, putBack, removalKnowing, saysMore } from './removal';
import type { RemovedRecord } from './removed-record';
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
  /** What was removed there. Absent: nothing is told of it. */
  readonly removed?: readonly RemovedRecord[];
  /** What was set aside there. */
  readonly setAside: readonly SetAside[];
  /** True where what was removed here is to come in all the same. */
  readonly bringsBack?: boolean;
};

/** What a merge does to one record. */
export type RecordChange = {
  readonly table: TableName;
  readonly id: string;
  /** The record as it stands after the merge; of a removed one, as it was last. */
  readonly value: TableValue[TableName];
  /**
   * `new`: it was not here before. `goes`: it was removed there. `stays-away`: it was removed here, and its copy from
   * there does not come in.
   */
  readonly fate: 'new' | 'changed' | 'goes' | 'stays-away';
  /** None of a new one, and of one that stays away where nothing was said there that was not known here. */
  readonly fields: readonly FieldChange[];
};

export type MergedSnapshot = { readonly values: SnapshotValues; readonly changes: readonly RecordChange[] };

/** Both sides in one: what is only on one of them stays, and what both changed is set aside where it loses. */
export function mergedSnapshot(current: SnapshotValues, incoming: Incoming): MergedSnapshot {
  const merged = TABLES.map((table) => mergedTable(table, current[table], current.removed, incoming));
  const changes = merged.flatMap((table) => table.changes);
  const setAside = [
    ...incoming.setAside,
    ...changes.flatMap((change) =>
      change.fields.flatMap((field) => asideOfField(change, field, incoming.name)),
    ),
  ];
  // Every table is in TABLES, so every key of a snapshot is there.
  const tables = Object.fromEntries(merged.map(({ table, standing }) => [table, standing]));
  const removed = merged.flatMap((table) => table.removed);
  return { values: { ...tables, removed, setAside } as unknown as SnapshotValues, changes };
}

type Merging<T extends TableName> = {
  readonly table: T;
  readonly here: ReadonlyMap<string, IncomingRecord<T>>;
  /** What is known of removed records. */
  readonly removed: Map<string, Trace>;
  readonly changes: RecordChange[];
};

function mergedTable<T extends TableName>(
  table: T,
  here: readonly IncomingRecord<T>[],
  removed: readonly RemovedRecord[] | undefined,
  incoming: Incoming,
) {
  const theirs: readonly IncomingRecord<T>[] = incoming.tables[table] ?? [];
  const merging: Merging<T> = {
    table,
    here: new Map(here.map((entry) => [entry.id, entry])),
    removed: new Map(ofTable(table, removed)),
    changes: [],
  };
  const merged = theirs.flatMap((entry) => mergedEntry(merging, entry, incoming.bringsBack === true) ?? []);
  const named = new Set(theirs.map(({ id }) => id));
  const goes = new Set(
    ofTable(table, incoming.removed).flatMap(([id, trace]) =>
      !named.has(id) && removalComesIn(merging, id, trace) ? [id] : [],
    ),
  );
  return {
    table,
    standing: [...here.filter(({ id }) => !named.has(id) && !goes.has(id)), ...merged],
    removed: [...merging.removed].map(([id, trace]): RemovedRecord => ({ table, id, trace })),
    changes: merging.changes,
  };
}

const ofTable = (table: TableName, removed: readonly RemovedRecord[] = []): readonly [string, Trace][] =>
  removed.flatMap((each) => (each.table === table ? [[each.id, each.trace] as [string, Trace]] : []));

/** A record of theirs as it stands here then; null where it was removed here and stays away. */
function mergedEntry<T extends TableName>(
  { table, here, removed, changes }: Merging<T>,
  entry: IncomingRecord<T>,
  bringsBack: boolean,
): Entry<T> | null {
  const { id, updatedAt, value, trace = NO_TRACE, covers } = entry;
  const mine = here.get(id);
  if (mine !== undefined) {
    const { changes: fields, ...record } = mergeRecord(table, mine, entry, covers);
    if (fields.length > 0) changes.push({ table, id, value: record.value, fate: 'changed', fields });
    return { id, ...(mine.updatedAt === undefined ? {} : { updatedAt: mine.updatedAt }), ...record };
  }
  const gone = removed.get(id);
  if (gone !== undefined && !bringsBack && !knowsRemoval(entry, gone)) {
    // The invented night is a device's own: nobody asks where it went.
    if (isInvented(entry)) return null;
    const fields: FieldChange[] = saysMore(table, entry, gone)
      ? [{ path: '', how: 'kept', there: value }]
      : [];
    changes.push({ table, id, value, fate: 'stays-away', fields });
    removed.set(id, removalKnowing(table, gone, entry));
    return null;
  }
  removed.delete(id);
  changes.push({ table, id, value, fate: 'new', fields: [] });
  return { id, value, trace: putBack(trace, gone), ...(updatedAt === undefined ? {} : { updatedAt }) };
}

/** Hears that a record was removed there; true where it goes from here too. */
function removalComesIn<T extends TableName>(
  { table, here, removed, changes }: Merging<T>,
  id: string,
  trace: Trace,
): boolean {
  const mine = here.get(id);
  if (mine === undefined) {
    const known = removed.get(id);
    removed.set(id, known === undefined ? trace : joinedRemoval(known, trace));
    return false;
  }
  if (isInvented(mine) || knowsRemoval(mine, trace)) return false;
  const { value } = mine;
  changes.push({ table, id, value, fate: 'goes', fields: [{ path: '', how: 'removed', here: value }] });
  removed.set(id, removalKnowing(table, trace, mine));
  return true;
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
