'use client';

import { useCallback, useMemo, useSyncExternalStore } from 'react';
import type { Stored, TableName, TableValue } from '@/lib/store/records';
import type { CachedTable } from '@/lib/store/table-cache';
import { useOpenedStore } from './store-provider';

const nothing = () => undefined;

/** All records of a table, kept current, also with what other tabs write; null until read. */
export function useTable<T extends TableName>(table: T): CachedTable<T> | null {
  return useRows(table, 'read');
}

/**
 * The same with what is being written already: for who looks at what was just done. It may be taken back, so nothing is
 * kept or sent by it.
 */
export function useShownTable<T extends TableName>(table: T): CachedTable<T> | null {
  return useRows(table, 'shown');
}

function useRows<T extends TableName>(table: T, as: 'read' | 'shown'): CachedTable<T> | null {
  const opened = useOpenedStore();
  const watch = useCallback(
    (listener: () => void) => (opened === null ? nothing : opened.tables.watch(table, listener)),
    [opened, table],
  );
  return useSyncExternalStore(
    watch,
    () => opened?.tables[as](table) ?? null,
    () => null,
  );
}

export type RecordState<T> =
  | { readonly status: 'opening' }
  | { readonly status: 'missing' }
  | { readonly status: 'there'; readonly stored: Stored<T> };

/** One record of a table; `id` null asks for none. */
export function useRecord<T extends TableName>(table: T, id: string | null): RecordState<TableValue[T]> {
  const rows = useTable(table);
  return useMemo(() => {
    if (rows === null) return { status: 'opening' };
    const stored = rows.find((row) => row.id === id);
    return stored === undefined ? { status: 'missing' } : { status: 'there', stored };
  }, [rows, id]);
}
