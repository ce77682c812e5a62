import type { Result } from '@/lib/result/result';
import { keyOf } from './backing';
import type { Stored, TableName, TableValue } from './records';
import type { RemovedRecord } from './removed-record';
import { sameValue } from './same-value';
import type { Rewritten, Snapshot, SnapshotTables, SnapshotValues, Store, StoreProblem } from './store-type';

type Entries<T extends TableName> = readonly Stored<TableValue[T]>[];

function undoTable<T extends TableName>(
  table: T,
  [before, after]: readonly [SnapshotTables, SnapshotTables],
  current: SnapshotTables,
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

/** What was known of removed records before, where nothing was learnt of them since: also that nothing was. */
function undoRemoved(
  { before, after }: Rewritten,
  current: Snapshot,
  tables: readonly TableName[],
): readonly RemovedRecord[] {
  const was = new Map(before.removed.map((removed) => [keyOf(removed), removed]));
  const since = new Map(after.removed.map((removed) => [keyOf(removed), removed]));
  const nothing = { marks: {}, seen: {} };
  const standing = tables.flatMap((table) => current[table].map(({ id }) => ({ table, id, trace: nothing })));
  const learnt = current.removed.filter((removed) => sameValue(removed, since.get(keyOf(removed))));
  return [...standing, ...learnt].map(
    ({ table, id }) => was.get(keyOf({ table, id })) ?? { table, id, trace: nothing },
  );
}

/**
 * Undoes a rewrite, and what was set aside by it. What was changed again since then stays as it is now. The tables are those of the snapshot: their
 * schemas, which a page would have to load, are not asked.
 */
export async function undoRewrite(
  store: Pick<Store, 'rewrite' | 'dropSetAside'>,
  done: Rewritten,
): Promise<Result<Rewritten, StoreProblem<never>>> {
  const { removed: _, ...before } = done.before;
  const tables = Object.keys(before) as TableName[];
  const undone = await store.rewrite((current) => {
    const entries = tables.map((table): [string, unknown] => [
      table,
      undoTable(table, [before, done.after], current),
    ]);
    // A snapshot has every table, so every key is there.
    const removed = undoRemoved(done, current, tables);
    return { ...Object.fromEntries(entries), removed } as SnapshotValues;
  });
  if (undone.ok) for (const { key } of done.setAside) await store.dropSetAside(key);
  return undone;
}
