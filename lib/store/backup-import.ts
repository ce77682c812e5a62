import type { Backup, BackupEntry } from './backup-file';
import { type Stored, TABLES, type TableName, type TableValue } from './records';
import { sameValue } from './same-value';
import type { Snapshot, SnapshotValues } from './store-type';

/** `merge`: what is new comes in, of two versions the later one stays. `replace`: the file's records and no others. */
export type ImportMode = 'merge' | 'replace';

/** What a file holds beside what is stored, before anything is changed. */
export type TablePreview = {
  readonly table: TableName;
  readonly inFile: number;
  /** Not stored here yet. */
  readonly added: number;
  readonly same: number;
  readonly newerInFile: number;
  readonly newerHere: number;
  /** Stored here, not in the file: a replacing import takes them away. */
  readonly onlyHere: number;
};

type Entry = { readonly id: string; readonly updatedAt: string; readonly value: unknown };

const isNewer = (a: Entry, b: Entry): boolean => Date.parse(a.updatedAt) > Date.parse(b.updatedAt);

function previewTable(table: TableName, file: readonly Entry[], here: readonly Entry[]): TablePreview {
  const known = new Map(here.map((entry) => [entry.id, entry]));
  const counts = { added: 0, same: 0, newerInFile: 0, newerHere: 0 };
  for (const entry of file) {
    const mine = known.get(entry.id);
    if (mine === undefined) counts.added += 1;
    else if (sameValue(mine.value, entry.value)) counts.same += 1;
    else if (isNewer(entry, mine)) counts.newerInFile += 1;
    else counts.newerHere += 1;
  }
  const ids = new Set(file.map(({ id }) => id));
  return { table, inFile: file.length, ...counts, onlyHere: here.filter(({ id }) => !ids.has(id)).length };
}

export function previewImport(backup: Backup, current: Snapshot): readonly TablePreview[] {
  return TABLES.map((table) => previewTable(table, backup.tables[table], current[table]));
}

function mergeTable<T extends TableName>(
  file: readonly BackupEntry<T>[],
  here: readonly Stored<TableValue[T]>[],
): readonly BackupEntry<T>[] {
  const incoming = new Map(file.map((entry) => [entry.id, entry]));
  const known = new Set(here.map(({ id }) => id));
  const kept = here.map(({ id, updatedAt, value }): BackupEntry<T> => {
    const mine = { id, updatedAt, value };
    const theirs = incoming.get(id);
    return theirs !== undefined && isNewer(theirs, mine) ? theirs : mine;
  });
  return [...kept, ...file.filter(({ id }) => !known.has(id))];
}

function eachTable(make: <T extends TableName>(table: T) => readonly BackupEntry<T>[]): SnapshotValues {
  // Every table is in TABLES, so every key is there.
  return Object.fromEntries(TABLES.map((table) => [table, make(table)])) as SnapshotValues;
}

/** What stands in the tables once a backup is taken in. */
export function withBackup(current: Snapshot, backup: Backup, mode: ImportMode): SnapshotValues {
  return mode === 'replace'
    ? backup.tables
    : eachTable((table) => mergeTable(backup.tables[table], current[table]));
}
