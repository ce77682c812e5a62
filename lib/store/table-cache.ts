import type { Stored, TableName, TableValue } from './records';
import type { Store } from './store-type';

export type CachedTable<T extends TableName> = readonly Stored<TableValue[T]>[];

export type TableCache = {
  /** What a table held when last read; null until it has been read once. */
  readonly read: <T extends TableName>(table: T) => CachedTable<T> | null;
  /** Waits until all that the store has told so far is read, too. */
  readonly settled: () => Promise<unknown>;
  /** Reads the table, if nobody did yet, and keeps it current until the way out is called. */
  readonly watch: (table: TableName, listener: () => void) => () => void;
};

/** Keeps the tables that are on screen in memory, so that a render can read them at once. */
export function tableCache(store: Pick<Store, 'list' | 'subscribe'>): TableCache {
  const tables: { [T in TableName]?: CachedTable<T> } = {};
  const listeners = new Map<TableName, Set<() => void>>();
  const reading = new Map<TableName, Promise<void>>();

  function refresh(table: TableName): Promise<void> {
    const turn = readAnew(table).finally(() => {
      if (reading.get(table) === turn) reading.delete(table);
    });
    reading.set(table, turn);
    return turn;
  }

  async function readAnew<T extends TableName>(table: T): Promise<void> {
    const stored = await store.list(table);
    const before: CachedTable<T> = tables[table] ?? [];
    const rows = withUnchanged(before, stored);
    if (tables[table] !== undefined && sameItems(rows, before)) return;
    Object.assign(tables, { [table]: rows });
    for (const listener of listeners.get(table) ?? []) listener();
  }

  store.subscribe((change) => {
    if (change.kind === 'health') return;
    if (change.kind === 'everything') for (const table of listeners.keys()) void refresh(table);
    else if (listeners.has(change.table)) void refresh(change.table);
  });

  return {
    read: (table) => tables[table] ?? null,
    settled: () => Promise.all(reading.values()),
    watch: (table, listener) => {
      const known = listeners.get(table);
      const watching = known ?? new Set();
      listeners.set(table, watching.add(listener));
      // Once watched, a table is kept current by what the store tells.
      if (known === undefined) void refresh(table);
      return () => watching.delete(listener);
    },
  };
}

/** A record read anew that did not change is handed on as it was: whoever works from it need not work again. */
function withUnchanged<V>(before: readonly Stored<V>[], read: readonly Stored<V>[]): readonly Stored<V>[] {
  const known = new Map(before.map((row) => [row.id, row]));
  return read.map((row) => {
    const same = known.get(row.id);
    return same?.revision === row.revision && same.updatedAt === row.updatedAt ? same : row;
  });
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);
