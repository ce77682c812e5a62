import type { Result } from '@/lib/result/result';
import type { Stored, TableName, TableValue } from './records';
import type { Rewritten, Snapshot, SnapshotValues, Store, StoreProblem } from './store-type';

type Entries<T extends TableName> = readonly Stored<TableValue[T]>[];

function undoTable<T extends TableName>(
  table: T,
  { before, after }: Rewritten,
  current: Snapshot,
): Entries<T> {
  const here: readonly Stored<TableValue[T]>[] = current[table];
  const back: readonly Stored<TableValue[T]>[] = before[table];
  const untouched = (id: string): boolean =>
    after[table].find((entry) => entry.id === id)?.revision ===
    here.find((entry) => entry.id === id)?.revision;
  const wasWritten = ({ id, revision }: Stored<TableValue[T]>): boolean =>
    after[table].find((entry) => entry.id === id)?.revision !== revision;
  return [
    ...back
      .filter(({ id }) => untouched(id))
      // Its fields come from where they came from before: the same file, merged again, comes in again.
      .map((entry) => (wasWritten(entry) ? { trace: { marks: {}, seen: {} }, ...entry } : entry)),
    ...here.filter(({ id }) => !untouched(id)),
  ];
}

/**
 * Undoes a rewrite, and what was set aside by it. What was changed again since then stays as it is now. The tables are those of the snapshot: their
 * schemas, which a page would have to load, are not asked.
 */
export async function undoRewrite(
  store: Pick<Store, 'rewrite' | 'dropSetAside'>,
  done: Rewritten,
): Promise<Result<Rewritten, StoreProblem<never>>> {
  const tables = Object.keys(done.before) as TableName[];
  const undone = await store.rewrite((current) => {
    const entries = tables.map((table): [string, unknown] => [table, undoTable(table, done, current)]);
    // A snapshot has every table, so every key is there.
    return Object.fromEntries(entries) as SnapshotValues;
  });
  if (undone.ok) for (const { key } of done.setAside) await store.dropSetAside(key);
  return undone;
}
