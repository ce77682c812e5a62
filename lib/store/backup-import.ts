import { keyOf } from './backing';
import type { Backup } from './backup-file';
import { mergedSnapshot, type RecordChange } from './merge-snapshot';
import { TABLES, type TableName } from './records';
import type { RemovedRecord } from './removed-record';
import { sameValue } from './same-value';
import type { Snapshot, SnapshotValues } from './store-type';
import { NO_TRACE } from './trace-schema';

/**
 * `merge`: nothing of either side is lost, and what was removed on one of them goes. `bring-back`: the same, but what
 * was removed here comes in again. `replace`: the file's records and no others.
 */
export type ImportMode = 'merge' | 'bring-back' | 'replace';

/** A backup file with what a person calls it. */
export type NamedBackup = Backup & { readonly name: string };

/** What a file would do here, before anything is changed. */
export type ImportPreview = {
  /** By a merge, record by record. */
  readonly changes: readonly RecordChange[];
  /** How many records of each table are in the file, and how many of those here would go or go back by a replacement. */
  readonly tables: readonly {
    readonly table: TableName;
    readonly inFile: number;
    readonly lost: number;
  }[];
};

export function previewImport(backup: NamedBackup, current: Snapshot): ImportPreview {
  const tables = TABLES.map((table) => {
    const file = new Map<string, unknown>(backup.tables[table].map(({ id, value }) => [id, value]));
    const lost = current[table].filter(({ id, value }) => !sameValue(value, file.get(id))).length;
    return { table, inFile: file.size, lost };
  });
  return { changes: mergedSnapshot(current, backup).changes, tables };
}

/** What stands in the tables once a backup is taken in. */
export function withBackup(current: Snapshot, backup: NamedBackup, mode: ImportMode): SnapshotValues {
  if (mode !== 'replace')
    return mergedSnapshot(current, { ...backup, bringsBack: mode === 'bring-back' }).values;
  return { ...backup.tables, removed: removedByReplacing(current, backup), setAside: backup.setAside };
}

/** A replacement goes back to what the file knows: what it takes away was not removed by anybody. */
function removedByReplacing(current: Snapshot, backup: Backup): readonly RemovedRecord[] {
  const here = [
    ...TABLES.flatMap((table) => current[table].map(({ id }) => ({ table, id }))),
    ...current.removed,
  ];
  const told = new Set(backup.removed.map(keyOf));
  const nothing = here.filter((record) => !told.has(keyOf(record)));
  return [...nothing.map(({ table, id }) => ({ table, id, trace: NO_TRACE })), ...backup.removed];
}
