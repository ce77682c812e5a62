import type { Backing, Scope } from './backing';
import type { Connection } from './connection';
import { errorName } from './database-unusable';

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
  return errorName(error) === 'AbortError' ? ending : error;
}

/** Rows in the browser's database. */
export function diskBacking({ begin, handedOver, close }: Connection): Backing {
  return {
    read: (scope) => begin(['records'], 'readonly').objectStore('records').getAll(rangeOf(scope)),
    transact: async (scope, decide) => {
      const transaction = begin(['records', 'aside'], 'readwrite');
      try {
        const { changes, answer } = decide(await transaction.objectStore('records').getAll(rangeOf(scope)));
        const writes = [
          ...changes.rows.map((row) => transaction.objectStore('records').put(row)),
          ...(changes.aside ?? []).map((aside) => transaction.objectStore('aside').put(aside)),
        ];
        handedOver(transaction);
        await Promise.all(writes);
        await transaction.done;
        return answer;
      } catch (error) {
        throw await causeOf(transaction, error);
      }
    },
    asides: () => begin(['aside'], 'readonly').objectStore('aside').getAll(),
    dropAside: async (key) => {
      const transaction = begin(['aside'], 'readwrite');
      const dropped = transaction.objectStore('aside').delete(key);
      handedOver(transaction);
      await Promise.all([dropped, transaction.done]);
    },
    close,
  };
}
