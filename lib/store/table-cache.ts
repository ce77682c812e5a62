import type { Stored, TableName, TableValue } from './records';
import { shownAhead } from './shown-ahead';
import type { Store, StoreChange } from './store-type';

export type CachedTable<T extends TableName> = readonly Stored<TableValue[T]>[];

export type TableCache = {
  /** What a table held when last read or written to; null until it has been read once. */
  readonly read: <T extends TableName>(table: T) => CachedTable<T> | null;
  /** The same with what is being written at once on top: only to be looked at, since it may be taken back. */
  readonly shown: <T extends TableName>(table: T) => CachedTable<T> | null;
  /** Waits until all that the store has told so far is read, too. */
  readonly settled: () => Promise<unknown>;
  /** Reads the table, if nobody did yet, and keeps it current until the way out is called. */
  readonly watch: (table: TableName, listener: () => void) => () => void;
  /** As the store's: once it is kept, what was written stands in its table, without reading all of that again. */
  readonly put: Store['put'];
  /** The same for what is shown before it is kept; where it is refused, what stands there is shown again. */
  readonly putAtOnce: Store['put'];
};

/** A record that is being written, and the highest revision of it that was told meanwhile. */
type Writing = { readonly table: TableName; readonly id: string; told: number };
type RowChange = Extract<StoreChange, { readonly table: TableName }>;

/** Keeps the tables that are on screen in memory, so that a render can read them at once. */
export function tableCache(store: Pick<Store, 'list' | 'subscribe' | 'put'>): TableCache {
  const ahead = shownAhead();
  const { read, shown, show, refresh, take, settled, listeners } = heldTables(store, ahead);
  const writing = writesUnderWay();

  store.subscribe((change) => {
    if (change.kind === 'everything') for (const table of listeners.keys()) void refresh(table);
    else if (change.kind !== 'health' && listeners.has(change.table) && !writing.hear(change))
      void refresh(change.table);
  });

  const put: Store['put'] = async (table, id, value, basedOn) => {
    const { written, told } = await writing.during(table, id, () => store.put(table, id, value, basedOn));
    const watched = listeners.has(table);
    if (written.ok && watched) take(table, ahead.kept(table, written.value));
    // Where another tab wrote it meanwhile, what stands there now is not what was written here.
    if (watched && told > (written.ok ? written.value.revision : 0)) void refresh(table);
    return written;
  };

  const putAtOnce: Store['put'] = async (table, id, value, basedOn) => {
    const over = read(table)?.find((row) => row.id === id);
    // What is based on something else than the screen shows may come out otherwise.
    if (over === undefined || over.revision !== basedOn || ahead.has(table, id))
      return put(table, id, value, basedOn);
    ahead.put(table, over, value);
    // The press itself is answered first: the dialog it shuts, the button that holds.
    const timer = setTimeout(() => show(table));
    let isTaken = false;
    try {
      const written = await put(table, id, value, basedOn);
      isTaken = written.ok;
      return written;
    } finally {
      clearTimeout(timer);
      if (!isTaken && ahead.drop(table, id)) show(table);
    }
  };

  return {
    read,
    shown,
    settled,
    watch: (table, listener) => {
      // Once watched, a table is kept current by what the store tells.
      if (!listeners.has(table)) void refresh(table);
      const watching = listeners.get(table) ?? new Set();
      listeners.set(table, watching.add(listener));
      return () => watching.delete(listener);
    },
    put,
    putAtOnce,
  };
}

/** The tables as they were last read or written to, what is shown of them, and who looks. */
function heldTables(store: Pick<Store, 'list'>, ahead: ReturnType<typeof shownAhead>) {
  const tables: { [T in TableName]?: CachedTable<T> } = {};
  const shown: { [T in TableName]?: CachedTable<T> } = {};
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
    stand(table, rows);
  }

  function stand<T extends TableName>(table: T, rows: CachedTable<T>): void {
    Object.assign(tables, { [table]: rows });
    show(table);
  }

  function show<T extends TableName>(table: T): void {
    Object.assign(shown, { [table]: ahead.over<T>(table, tables[table] ?? []) });
    for (const listener of listeners.get(table) ?? []) listener();
  }

  /** Puts a written record in its place; where there is none yet, or the table is being read, it is read anew. */
  function take<T extends TableName>(table: T, written: Stored<TableValue[T]>): void {
    const rows = withWritten<T>(tables[table] ?? [], written);
    if (rows === null || reading.has(table)) void refresh(table);
    else stand(table, rows);
  }

  return {
    read: <T extends TableName>(table: T): CachedTable<T> | null => tables[table] ?? null,
    shown: <T extends TableName>(table: T): CachedTable<T> | null => shown[table] ?? null,
    settled: () => Promise.all(reading.values()),
    listeners,
    show,
    refresh,
    take,
  };
}

/** The rows with a newer state of one of them; null where it is none of them. */
function withWritten<T extends TableName>(
  rows: CachedTable<T>,
  written: Stored<TableValue[T]>,
): CachedTable<T> | null {
  if (!rows.some(({ id }) => id === written.id)) return null;
  return rows.map((row) => (row.id === written.id && row.revision < written.revision ? written : row));
}

/**
 * The records that are being written here. The store tells of one a moment before it answers, and its answer is all that is
 * needed; what it tells meanwhile is noted, lest another's write goes unheard.
 */
function writesUnderWay() {
  const writing = new Set<Writing>();
  return {
    /** Does a write, and hands back the highest revision that was told of its record meanwhile; 0: none. */
    during: async <W>(table: TableName, id: string, write: () => Promise<W>) => {
      const one: Writing = { table, id, told: 0 };
      writing.add(one);
      try {
        const written = await write();
        return { written, told: one.told };
      } finally {
        writing.delete(one);
      }
    },
    /** False where what is told is not of a record that is being written. */
    hear: ({ table, id, revision, kind }: RowChange): boolean => {
      const own = [...writing].filter((one) => kind === 'put' && one.table === table && one.id === id);
      for (const one of own) one.told = Math.max(one.told, revision);
      return own.length > 0;
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
