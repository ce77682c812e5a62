import type { Backup } from './backup-file';
import { mergedSnapshot, type RecordChange } from './merge-snapshot';
import { TABLES, type TableName } from './records';
import { sameValue } from './same-value';
import type { Snapshot, SnapshotValues } from './store-type';

/** `merge`: nothing of either side is lost. `replace`: the file's records and no others. */
export type ImportMode = 'merge' | 'replace';

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
  if (mode === 'merge') return mergedSnapshot(current, backup).values;
  return { ...backup.tables, setAside: backup.setAside };
}
