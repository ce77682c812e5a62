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
  return [...back.filter(({ id }) => untouched(id)), ...here.filter(({ id }) => !untouched(id))];
}

/**
 * Undoes a rewrite. What was changed again since then stays as it is now. The tables are those of the snapshot: their
 * schemas, which a page would have to load, are not asked.
 */
export function undoRewrite(
  store: Pick<Store, 'rewrite'>,
  done: Rewritten,
): Promise<Result<Rewritten, StoreProblem<never>>> {
  const tables = Object.keys(done.before) as TableName[];
  return store.rewrite((current) => {
    const entries = tables.map((table): [string, unknown] => [table, undoTable(table, done, current)]);
    // A snapshot has every table, so every key is there.
    return Object.fromEntries(entries) as SnapshotValues;
  });
}
