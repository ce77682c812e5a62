import * as z from 'zod/mini';
import { type Stored, TABLE_SCHEMA, TABLES, type TableName, type TableValue } from './records';
import type { StoreIssue } from './store-type';
import { type Trace, traceSchema } from './trace-schema';

/** One record as it lies in the database; a removed one leaves its row without a value, so that revisions go on. */
export type Row = {
  readonly table: TableName;
  readonly id: string;
  /** Place in its table: rises with the time the record was first written. */
  readonly order: number;
  readonly revision: number;
  readonly updatedAt: string;
  readonly removed: boolean;
  readonly value: unknown;
  readonly trace?: Trace | undefined;
};

/** A row as found: only its key is sure. */
export type RawRow = {
  readonly table: string;
  readonly id: string;
  readonly revision?: unknown;
  readonly removed?: unknown;
  readonly value?: unknown;
};

/** 0 where there is no row, or none with a revision. */
export function revisionOf(raw: RawRow | undefined): number {
  return typeof raw?.revision === 'number' && Number.isInteger(raw.revision) ? Math.max(raw.revision, 0) : 0;
}

export const idSchema = z.string().check(z.minLength(1), z.maxLength(64));

const rowSchema = z.strictObject({
  table: z.enum(TABLES),
  id: idSchema,
  order: z.number(),
  revision: z.int().check(z.minimum(1)),
  updatedAt: z.iso.datetime(),
  removed: z.boolean(),
  value: z.unknown(),
  trace: z.optional(traceSchema),
});

export type ReadRow =
  | { readonly row: Row; readonly issues: null }
  | { readonly row: null; readonly issues: readonly StoreIssue[] };

export function issuesOf(
  error: z.core.$ZodError,
  within: readonly PropertyKey[] = [],
): readonly StoreIssue[] {
  return error.issues.map(({ path, message }) => ({ path: [...within, ...path].join('.'), message }));
}

/** Checks a row and the value in it; defaults that older versions did not write are filled in. */
export function readRow(raw: RawRow): ReadRow {
  const row = rowSchema.safeParse(raw);
  if (!row.success) return { row: null, issues: issuesOf(row.error) };
  if (row.data.removed) return { row: row.data, issues: null };
  const value = TABLE_SCHEMA[row.data.table].safeParse(row.data.value);
  if (!value.success) return { row: null, issues: issuesOf(value.error, ['value']) };
  return { row: { ...row.data, value: value.data }, issues: null };
}

/** What the rest of the app sees of a row; null for a removed one. */
export function storedOf<T extends TableName>(row: Row | null): Stored<TableValue[T]> | null {
  if (row === null || row.removed) return null;
  const { id, revision, updatedAt, trace } = row;
  // A row's value was parsed by the schema of its table, in readRow or before it was written.
  const value = row.value as TableValue[T];
  return { id, revision, updatedAt, value, ...(trace === undefined ? {} : { trace }) };
}

export const byPlace = (a: Row, b: Row): number => a.order - b.order || (a.id < b.id ? -1 : 1);
