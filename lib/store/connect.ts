import { type IDBPObjectStore, openDB } from 'idb';
import { type Connection, connectionOn, type Database, type Schema } from './connection';
import { DATABASE_NAME } from './database-name';
import { DatabaseUnusable, errorName, reasonOf } from './database-unusable';
import { MIGRATIONS, type Migration, migrateValue, newestVersion } from './migrations';
import type { RawRow } from './row';

export type ConnectOptions = {
  readonly name?: string;
  readonly migrations?: readonly Migration[];
  /** Called when a newer app, another tab's, wants the database: this connection is closed already. */
  readonly onSuperseded?: () => void;
};

/** What can be ended at once, from the moment the browser is asked for the database. */
export type Holding = {
  /** While old records are brought up to date, and after. */
  upgrade: { abort(): void } | null;
  /** Old records brought up to date so far; null until the browser lets them be. */
  updated: number | null;
  connection: Connection | null;
  /** Nobody waits any more: what opens now is closed again. */
  given: boolean;
};

/** Asks the browser for the database and brings old records up to date, or throws DatabaseUnusable. */
export function connect(holding: Holding, options: ConnectOptions): Promise<Connection> {
  const { name = DATABASE_NAME, migrations = MIGRATIONS, onSuperseded } = options;
  return new Promise((resolve, reject) => {
    const refuse = (error: unknown): void => {
      holding.given = true;
      // Some private windows have a database that cannot be opened: it is in a wrong state from the start.
      const because = errorName(error) === 'InvalidStateError' ? 'no-database' : reasonOf(error);
      reject(new DatabaseUnusable(because, error));
    };
    const opening = async (): Promise<Database> =>
      openDB<Schema>(name, newestVersion(migrations), {
        upgrade: (database, oldVersion, _, transaction) => {
          holding.upgrade = transaction;
          holding.updated = 0;
          if (!database.objectStoreNames.contains('records'))
            database.createObjectStore('records', { keyPath: ['table', 'id'] });
          if (!database.objectStoreNames.contains('aside'))
            database.createObjectStore('aside', { keyPath: 'key' });
          // A failed step leaves the old version as it was; opening then fails with the reason.
          migrateRows(transaction.objectStore('records'), oldVersion, migrations, () => {
            holding.updated = (holding.updated ?? 0) + 1;
          }).catch(() => transaction.abort());
        },
        // Old tabs close on request; one that does not holds everybody up. What opens after that is not waited for.
        blocked: () => refuse(new DatabaseUnusable('blocked')),
        blocking: (_old, _new, event) => {
          // idb hands over the plain event of the connection.
          (event.target as IDBDatabase).close();
          onSuperseded?.();
        },
      });
    opening().then((database) => {
      if (holding.given) return database.close();
      holding.connection = connectionOn(database);
      resolve(holding.connection);
    }, refuse);
  });
}

/** A record that a step cannot read stays as it is; it is set aside when it is read. */
function migrateRow(row: RawRow, from: number, migrations: readonly Migration[]): RawRow {
  if (row.removed === true) return row;
  try {
    return { ...row, value: migrateValue({ table: row.table, value: row.value }, from, migrations) };
  } catch {
    return row;
  }
}

type Records = IDBPObjectStore<Schema, ArrayLike<'records' | 'aside'>, 'records', 'versionchange'>;

async function migrateRows(
  records: Records,
  from: number,
  migrations: readonly Migration[],
  onRow: () => void,
): Promise<void> {
  for (let cursor = await records.openCursor(); cursor !== null; cursor = await cursor.continue()) {
    await cursor.update(migrateRow(cursor.value, from, migrations));
    onRow();
  }
}
