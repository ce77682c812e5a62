import { keyOf } from './backing';
import type { Backup } from './backup-file';
import { TABLES } from './records';
import type { Snapshot } from './store-type';
import { isAhead, traceRenamed } from './trace';
import type { Trace } from './trace-schema';

/**
 * Whether a file knows of writes by this very device that are not here. Then another browser writes under its name, as a
 * copy of its profile does, or what is here went back to an older state; counts of one are no counts of the other.
 */
export function isOfCopy(backup: Backup, current: Snapshot, device: string): boolean {
  const here = new Map<string, Trace | undefined>(current.removed.map((each) => [keyOf(each), each.trace]));
  for (const table of TABLES)
    for (const { id, trace } of current[table]) here.set(keyOf({ table, id }), trace);
  const ahead = (key: string, trace: Trace): boolean =>
    here.has(key) && isAhead(trace, here.get(key), device);
  return (
    TABLES.some((table) =>
      backup.tables[table].some(({ id, trace }) => ahead(keyOf({ table, id }), trace)),
    ) || backup.removed.some((each) => ahead(keyOf(each), each.trace))
  );
}

/** The file with what its device wrote under this one's name told apart: then neither is taken for known. */
export function asOfAnother(backup: Backup, device: string): Backup {
  const apart = <R extends { readonly trace: Trace }>(record: R): R => ({
    ...record,
    trace: traceRenamed(record.trace, (by) => (by === device ? `${by}/copy` : by)),
  });
  const tables = Object.fromEntries(TABLES.map((table) => [table, backup.tables[table].map(apart)]));
  // Every table is in TABLES, and each keeps its values.
  return { ...backup, tables: tables as unknown as Backup['tables'], removed: backup.removed.map(apart) };
}
