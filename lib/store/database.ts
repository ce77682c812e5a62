import { type DBSchema, type IDBPDatabase, type IDBPObjectStore, openDB } from 'idb';
import type { Backing, Scope } from './backing';
import { MIGRATIONS, type Migration, migrateValue, newestVersion } from './migrations';
import type { RawRow } from './row';
import type { MemoryReason, SetAside } from './store-type';

export const DATABASE_NAME = 'heavy-air';

type Schema = DBSchema & {
  records: { key: [string, string]; value: RawRow };
  aside: { key: string; value: SetAside };
};
type Database = IDBPDatabase<Schema>;

/** The database cannot be used, and why. */
export class DatabaseUnusable extends Error {
  readonly because: MemoryReason;
  constructor(because: MemoryReason, cause?: unknown) {
    super(`database unusable: ${because}`, { cause });
    this.because = because;
  }
}

export type DatabaseOptions = {
  readonly name?: string;
  readonly migrations?: readonly Migration[];
  /** Called when a newer app, another tab's, wants the database: this connection is closed already. */
  readonly onSuperseded?: () => void;
};

/** DOM exceptions of other frames fail instanceof, so names are compared. */
const nameOf = (error: unknown): unknown =>
  typeof error === 'object' && error !== null && 'name' in error ? error.name : null;

/** What a failed request means. */
export function reasonOf(error: unknown): MemoryReason {
  if (error instanceof DatabaseUnusable) return error.because;
  const name = nameOf(error);
  if (name === 'QuotaExceededError') return 'full';
  if (name === 'VersionError') return 'newer-app';
  return name === 'SecurityError' ? 'no-database' : 'failed';
}

function rangeOf(scope: Scope): IDBKeyRange | undefined {
  if (scope === 'all') return undefined;
  if (scope.id !== undefined) return IDBKeyRange.only([scope.table, scope.id]);
  return IDBKeyRange.bound([scope.table], [scope.table, []]);
}

/**
 * Ends a failed transaction and finds what went wrong: where storage is full, single requests say only that they were
 * aborted, and the transaction says why.
 */
async function causeOf(
  transaction: { abort(): void; readonly done: Promise<void> },
  error: unknown,
): Promise<unknown> {
  try {
    transaction.abort();
  } catch {
    // Aborted already by the failure itself.
  }
  const ending: unknown = await transaction.done.then(
    () => error,
    (reason: unknown) => reason,
  );
  return nameOf(error) === 'AbortError' ? ending : error;
}

function diskBacking(database: Database): Backing {
  return {
    read: (scope) => database.getAll('records', rangeOf(scope)),
    transact: async (scope, decide) => {
      const transaction = database.transaction(['records', 'aside'], 'readwrite');
      // Looked at below on every path; without this a failed transaction is also reported as unhandled.
      transaction.done.catch(() => undefined);
      try {
        const { changes, answer } = decide(await transaction.objectStore('records').getAll(rangeOf(scope)));
        const writes = [
          ...changes.rows.map((row) => transaction.objectStore('records').put(row)),
          ...(changes.aside ?? []).map((aside) => transaction.objectStore('aside').put(aside)),
        ];
        await Promise.all(writes);
        await transaction.done;
        return answer;
      } catch (error) {
        throw await causeOf(transaction, error);
      }
    },
    asides: () => database.getAll('aside'),
    dropAside: (key) => database.delete('aside', key),
    close: () => database.close(),
  };
}

/** Opens the database on disk, brings old records up to date, or throws DatabaseUnusable. */
export async function openDatabase(options: DatabaseOptions = {}): Promise<Backing> {
  const { name = DATABASE_NAME, migrations = MIGRATIONS, onSuperseded } = options;
  if (typeof indexedDB === 'undefined' || indexedDB === null) throw new DatabaseUnusable('no-database');
  const version = newestVersion(migrations);
  return new Promise((resolve, reject) => {
    let given = false;
    const refuse = (error: unknown): void => {
      given = true;
      // Some private windows have a database that cannot be opened: it is in a wrong state from the start.
      const because = nameOf(error) === 'InvalidStateError' ? 'no-database' : reasonOf(error);
      reject(new DatabaseUnusable(because, error));
    };
    const opening = async (): Promise<Database> =>
      openDB<Schema>(name, version, {
        upgrade: (database, oldVersion, _, transaction) => {
          if (!database.objectStoreNames.contains('records'))
            database.createObjectStore('records', { keyPath: ['table', 'id'] });
          if (!database.objectStoreNames.contains('aside'))
            database.createObjectStore('aside', { keyPath: 'key' });
          // A failed step leaves the old version as it was; opening then fails with the reason.
          migrateRows(transaction.objectStore('records'), oldVersion, migrations).catch(() =>
            transaction.abort(),
          );
        },
        // Old tabs close on request; one that does not holds everybody up. What opens after that is not waited for.
        blocked: () => refuse(new DatabaseUnusable('blocked')),
        blocking: (_old, _new, event) => {
          // idb hands over the plain event of the connection.
          (event.target as IDBDatabase).close();
          onSuperseded?.();
        },
      });
    opening().then((database) => (given ? database.close() : resolve(diskBacking(database))), refuse);
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

async function migrateRows(records: Records, from: number, migrations: readonly Migration[]): Promise<void> {
  for (let cursor = await records.openCursor(); cursor !== null; cursor = await cursor.continue())
    await cursor.update(migrateRow(cursor.value, from, migrations));
}
