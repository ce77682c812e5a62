import { fail, ok, type Result } from '@/lib/result/result';
import type { Stored, TableName, TableValue } from '@/lib/store/records';
import type { Store, StoreProblem } from '@/lib/store/store-type';

export type ChangeProblem = { readonly code: 'missing' } | StoreProblem<unknown>;

/** Another tab can win a race a few times, not for ever. */
const TRIES = 5;

type Change<T extends TableName> = {
  readonly table: T;
  readonly id: string;
  /** Must say what to change and not lean on what was seen before: it runs again where another tab wrote meanwhile. */
  readonly change: (current: TableValue[T]) => TableValue[T];
};

/** Changes one record on top of whatever is stored now. Hands back what stood before, for undo. */
export async function changeRecord<T extends TableName>(
  store: Store,
  { table, id, change }: Change<T>,
): Promise<Result<{ readonly before: TableValue[T]; readonly after: Stored<TableValue[T]> }, ChangeProblem>> {
  let last: ChangeProblem = { code: 'missing' };
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const current = await store.get(table, id);
    if (current === null) return fail({ code: 'missing' });
    const written = await store.put(table, id, change(current.value), current.revision);
    if (written.ok) return ok({ before: current.value, after: written.value });
    last = written.reason;
    if (written.reason.code !== 'conflict') break;
  }
  return fail(last);
}
