import { fail, ok, type Result } from '@/lib/result/result';
import type { Stored, TableName, TableValue } from './records';
import { putBack, traceOfRemoval } from './removal';
import { type Row, storedOf } from './row';
import type { StoreProblem } from './store-type';
import { traceAfter } from './trace';

/** What a write wants; its value was parsed by the schema of its table. The rules are the same on disk and in memory. */
export type Put = {
  readonly table: TableName;
  readonly id: string;
  readonly value: unknown;
  readonly basedOn: number | null;
};
export type WriteStamp = { readonly order: number; readonly updatedAt: string; readonly device: string };

/** The row to write and what the caller gets back, or why not. */
export type Outcome<T extends TableName> = Result<
  { readonly write: Row; readonly answer: Stored<TableValue[T]> },
  StoreProblem<TableValue[T]>
>;

function written<T extends TableName>(row: Row): Outcome<T> {
  const answer = storedOf<T>(row);
  if (answer === null) throw new Error('a written row is not a removed one');
  return ok({ write: row, answer });
}

/** The row that a write leaves, with the trace of its fields. */
export function rowOf(
  current: Row | null,
  { table, id, value }: Pick<Put, 'table' | 'id' | 'value'>,
  { order, updatedAt, device }: WriteStamp,
): Row {
  const revision = (current?.revision ?? 0) + 1;
  const before = current === null || current.removed ? null : current.value;
  const trace = traceAfter({ table, before, after: value, trace: current?.trace, device, revision });
  return { table, id, order: current?.order ?? order, revision, updatedAt, removed: false, value, trace };
}

/** A write passes only on top of the revision it was based on. */
export function putRow<T extends TableName>(current: Row | null, put: Put, clock: WriteStamp): Outcome<T> {
  const theirs = storedOf<T>(current);
  // The value was parsed by the schema of its table.
  if ((theirs?.revision ?? null) !== put.basedOn)
    return fail({ code: 'conflict', mine: put.value as TableValue[T], theirs });
  return written(rowOf(current, put, clock));
}

/** Removing leaves the row without its value; the answer is what was removed. */
export function removeRow<T extends TableName>(
  current: Row | null,
  basedOn: number,
  clock: WriteStamp,
): Outcome<T> {
  const theirs = storedOf<T>(current);
  if (current === null || theirs === null) return fail({ code: 'not-found' });
  if (theirs.revision !== basedOn) return fail({ code: 'conflict', mine: null, theirs });
  return ok({ write: removedRow(current, clock), answer: theirs });
}

/** What a removal leaves of a row: a write like any other, with what was known of the record. */
export function removedRow(row: Row, clock: WriteStamp): Row {
  const { table, value, trace, revision } = row;
  const removal = traceOfRemoval({ table, value, trace, device: clock.device, revision: revision + 1 });
  return { ...emptied(row, clock), trace: removal };
}

/** The place of a record whose value is gone. Nobody removed it: what other devices have of it may come in. */
export function emptied(row: Row, { updatedAt }: WriteStamp): Row {
  return { ...row, revision: row.revision + 1, updatedAt, removed: true, value: null };
}

/** Brings back what was removed, above every revision it ever had, unless another record took its place. */
export function restoreRow<T extends TableName>(
  current: Row | null,
  removed: { readonly table: T; readonly stored: Stored<TableValue[T]> },
  clock: WriteStamp,
): Outcome<T> {
  const { table, stored } = removed;
  const theirs = storedOf<T>(current);
  if (theirs !== null) return fail({ code: 'conflict', mine: stored.value, theirs });
  return written({
    table,
    id: stored.id,
    order: current?.order ?? clock.order,
    revision: Math.max(current?.revision ?? 0, stored.revision) + 1,
    updatedAt: clock.updatedAt,
    removed: false,
    value: stored.value,
    trace: current?.trace === undefined ? stored.trace : putBack(stored.trace, current.trace),
  });
}
