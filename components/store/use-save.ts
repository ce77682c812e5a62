'use client';

import { useRef } from 'react';
import type { Stored, TableValue } from '@/lib/store/records';
import { type FormTable, useWrite, type WriteOutcome } from './use-write';

/**
 * Saves one record from a form. The form's change is put on the record as it was when the form opened; where the
 * record has changed since, that is said first, and saving again puts the change on the newer one.
 */
export function useSave<T extends FormTable>(table: T, before: Stored<TableValue[T]>) {
  const write = useWrite();
  const seen = useRef({ stored: before, gone: false });
  return async (
    change: (record: TableValue[T]) => TableValue[T],
    words: string | null = null,
  ): Promise<WriteOutcome> => {
    const { refused, stored, gone } = await write.over({ table, ...seen.current }, change, words);
    seen.current = { stored, gone };
    return refused;
  };
}
