import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import type { RawRow } from './row';
import type { SetAside } from './set-aside-record';

export type Schema = DBSchema & {
  records: { key: [string, string]; value: RawRow };
  aside: { key: string; value: SetAside };
};
export type Database = IDBPDatabase<Schema>;

type Names = StoreNames<Schema>[];
type Mode = 'readonly' | 'readwrite';
/** Of any transaction: the way to end it. */
type Ending = { abort(): void; commit(): void; readonly done: Promise<void> };

/** A connection whose running transactions are known, so that all can be ended at once. */
export type Connection = {
  readonly begin: <M extends Mode>(names: Names, mode: M) => IDBPTransaction<Schema, Names, M>;
  /** Everything to be written by it has been handed over. */
  readonly handedOver: (transaction: Ending) => void;
  /** Once what runs has ended by itself. */
  readonly close: () => void;
  /** At once: what was handed over is written, all else is undone. */
  readonly letGo: () => void;
};

export function connectionOn(database: Database): Connection {
  const running = new Map<Ending, 'open' | 'handed over'>();
  return {
    begin: (names, mode) => {
      const transaction = database.transaction(names, mode);
      running.set(transaction, 'open');
      // Also where it fails: whoever began it looks at that, and without this it is reported as unhandled as well.
      const forget = (): void => void running.delete(transaction);
      transaction.done.then(forget, forget);
      return transaction;
    },
    handedOver: (transaction) => void running.set(transaction, 'handed over'),
    close: () => database.close(),
    letGo: () => {
      for (const [transaction, stage] of running) end(transaction, stage === 'handed over');
      running.clear();
      database.close();
    },
  };
}

function end(transaction: Ending, keep: boolean): void {
  try {
    if (keep) transaction.commit();
    else transaction.abort();
  } catch {
    // It has ended a moment before.
  }
}
