import { fail, ok, type Result } from '@/lib/result/result';
import { keyOf, type WriteDecision } from './backing';
import { TABLE_SCHEMA, type TableName, type TableValue } from './records';
import { rowsFor, snapshotOf } from './rewrite';
import { byPlace, idSchema, issuesOf, type Row, storedOf } from './row';
import { type Outcome, putRow, removeRow, restoreRow, type WriteStamp } from './rules';
import type { SetAside } from './set-aside-record';
import type { SoundRows } from './sound-rows';
import type { Rewritten, Store, StoreChange, StoreProblem, Written } from './store-type';

export type RecordsParts = {
  readonly rows: SoundRows;
  readonly isClosed: () => boolean;
  /** What stands there already is not set aside twice, and stays when the rewrite is undone. */
  readonly setAsideBefore: () => readonly SetAside[];
  /** Called after each write with what subscribers and other tabs should hear. */
  readonly onWritten: (change: Exclude<StoreChange, { kind: 'health' }>) => void;
};

type Rule<T extends TableName> = (row: Row | null, now: WriteStamp) => Outcome<T>;

async function write<T extends TableName>(
  { rows, isClosed, onWritten }: RecordsParts,
  key: { readonly table: T; readonly id: string },
  rule: Rule<T>,
): Promise<Written<T>> {
  if (isClosed()) return fail({ code: 'closed' });
  const outcome = await rows.transact(key, ([row], now): WriteDecision<Outcome<T>> => {
    const ruled = rule(row ?? null, now);
    return { changes: { rows: ruled.ok ? [ruled.value.write] : [] }, answer: ruled };
  });
  if (!outcome.ok) return outcome;
  const { table, id, revision, removed } = outcome.value.write;
  onWritten({ kind: removed ? 'removed' : 'put', table, id, revision, origin: 'this-tab' });
  return ok(outcome.value.answer);
}

/** What is no record of its table never comes near the database. */
function parse<T extends TableName>(
  table: T,
  record: { readonly id: string; readonly value: unknown },
): Result<TableValue[T], StoreProblem<TableValue[T]>> {
  const id = idSchema.safeParse(record.id);
  if (!id.success) return fail({ code: 'invalid', issues: issuesOf(id.error, ['id']) });
  const value = TABLE_SCHEMA[table].safeParse(record.value);
  if (!value.success) return fail({ code: 'invalid', issues: issuesOf(value.error) });
  // Parsed by the schema of this very table.
  return ok(value.data as TableValue[T]);
}

async function rewrite(
  { rows, isClosed, onWritten, setAsideBefore }: RecordsParts,
  change: Parameters<Store['rewrite']>[0],
): ReturnType<Store['rewrite']> {
  if (isClosed()) return fail({ code: 'closed' });
  const result = await rows.transact(
    'all',
    (all, now): WriteDecision<Result<Rewritten, StoreProblem<never>>> => {
      const before = snapshotOf(all);
      const wanted = change(before);
      const known = new Set(setAsideBefore().map(({ key }) => key));
      const setAside = (wanted.setAside ?? []).filter(({ key }) => !known.has(key));
      const writes = rowsFor(all, wanted, now);
      if (!writes.ok) return { changes: { rows: [] }, answer: writes };
      const changed = new Map([...all, ...writes.value].map((row) => [keyOf(row), row]));
      return {
        changes: { rows: writes.value, aside: setAside },
        answer: ok({ before, after: snapshotOf([...changed.values()]), setAside }),
      };
    },
  );
  if (result.ok) onWritten({ kind: 'everything', origin: 'this-tab' });
  return result;
}

/** The part of the store that reads and writes records by the rules. */
export function storeRecords(
  parts: RecordsParts,
): Pick<Store, 'list' | 'get' | 'put' | 'remove' | 'restore' | 'snapshot' | 'rewrite'> {
  const { rows } = parts;
  return {
    list: async <T extends TableName>(table: T) =>
      [...(await rows.read({ table }))].sort(byPlace).flatMap((row) => storedOf<T>(row) ?? []),
    get: async <T extends TableName>(table: T, id: string) =>
      storedOf<T>((await rows.read({ table, id }))[0] ?? null),
    put: async (table, id, value, basedOn) => {
      const parsed = parse(table, { id, value });
      if (!parsed.ok) return parsed;
      return write(parts, { table, id }, (row, now) =>
        putRow(row, { table, id, value: parsed.value, basedOn }, now),
      );
    },
    remove: (table, id, basedOn) => write(parts, { table, id }, (row, now) => removeRow(row, basedOn, now)),
    restore: async (table, removed) => {
      const parsed = parse(table, removed);
      if (!parsed.ok) return parsed;
      const stored = { ...removed, value: parsed.value };
      return write(parts, { table, id: removed.id }, (row, now) => restoreRow(row, { table, stored }, now));
    },
    snapshot: async () => snapshotOf(await rows.read('all')),
    rewrite: (change) => rewrite(parts, change),
  };
}
