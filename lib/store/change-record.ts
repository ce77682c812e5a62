import { fail, ok, type Result } from '@/lib/result/result';
import type { Stored, TableName, TableValue } from './records';
import type { Store, StoreProblem } from './store-type';

/** Where a record stands. */
export type RecordKey<T extends TableName> = { readonly table: T; readonly id: string };

export type ChangeProblem = { readonly code: 'missing' } | StoreProblem<unknown>;

/** At once, or when it has been worked out. */
export type Soon<T> = T | Promise<T>;

/** Another tab can win a race a few times, not for ever. */
const TRIES = 5;

/**
 * Writes a record on top of whatever is stored now. `next` gets that, null where there is nothing, and answers what is
 * to stand, null to leave it alone. It must not lean on what was seen before: it runs again where another tab wrote
 * meanwhile. Hands back what stands then; null where it was left alone.
 */
export async function putOnTop<T extends TableName>(
  store: Pick<Store, 'get' | 'put'>,
  { table, id }: RecordKey<T>,
  next: (current: TableValue[T] | null) => Soon<TableValue[T] | null>,
): Promise<Result<Stored<TableValue[T]> | null, StoreProblem<unknown>>> {
  for (let attempt = 1; ; attempt += 1) {
    const current = await store.get(table, id);
    const value = await next(current?.value ?? null);
    if (value === null) return ok(null);
    const written = await store.put(table, id, value, current?.revision ?? null);
    if (written.ok || written.reason.code !== 'conflict' || attempt === TRIES) return written;
  }
}

type Changed<V> = { readonly before: V; readonly after: Stored<V> };

/** Changes a record that is there, as `putOnTop` does. Hands back what stood before as well, for undo. */
export async function changeRecord<T extends TableName>(
  store: Pick<Store, 'get' | 'put'>,
  key: RecordKey<T>,
  change: (current: TableValue[T]) => Soon<TableValue[T]>,
): Promise<Result<Changed<TableValue[T]>, ChangeProblem>> {
  let before: TableValue[T] | null = null;
  const written = await putOnTop(store, key, (current) => {
    before = current;
    return current === null ? null : change(current);
  });
  if (!written.ok) return written;
  if (written.value === null || before === null) return fail({ code: 'missing' });
  return ok({ before, after: written.value });
}
