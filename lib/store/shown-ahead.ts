import type { Stored, TableName, TableValue } from './records';
import { sameValue } from './same-value';

type Ahead = { readonly over: Stored<unknown>; readonly row: Stored<unknown> };

/** Of what is only shown so far the revision is none of the store's: nothing that was based on it would be taken. */
const BETWEEN = 0.5;

/** False while it is only shown. */
export const isKept = ({ revision }: Stored<unknown>): boolean => Number.isInteger(revision);

/** Records that are shown before they are kept, at most one for each, over the very row in whose place it is to come. */
export function shownAhead() {
  const tables = new Map<TableName, Map<string, Ahead>>();
  const of = (table: TableName): Map<string, Ahead> => {
    const known = tables.get(table) ?? new Map<string, Ahead>();
    tables.set(table, known);
    return known;
  };
  return {
    has: (table: TableName, id: string): boolean => of(table).has(id),
    put: <T extends TableName>(table: T, over: Stored<TableValue[T]>, value: TableValue[T]): void => {
      of(table).set(over.id, { over, row: { ...over, value, revision: over.revision + BETWEEN } });
    },
    /** False where it has had its time already. */
    drop: (table: TableName, id: string): boolean => of(table).delete(id),
    /** What was kept, with the very value that was shown if it is that one: whoever worked from it need not work again. */
    kept: <T extends TableName>(table: T, written: Stored<TableValue[T]>): Stored<TableValue[T]> => {
      const value = of(table).get(written.id)?.row.value;
      // Put there with a value of this very table.
      return sameValue(value, written.value) ? { ...written, value: value as TableValue[T] } : written;
    },
    /** The rows as they are shown. What was over a row that is no longer one of them has had its time. */
    over: <T extends TableName>(
      table: T,
      rows: readonly Stored<TableValue[T]>[],
    ): readonly Stored<TableValue[T]>[] => {
      const ahead = of(table);
      for (const [id, { over }] of ahead) if (!rows.some((row) => row === over)) ahead.delete(id);
      if (ahead.size === 0) return rows;
      // Put there with a value of this very table.
      return rows.map((row) => (ahead.get(row.id)?.row as Stored<TableValue[T]> | undefined) ?? row);
    },
  };
}
