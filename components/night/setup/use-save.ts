'use client';

import { useRef } from 'react';
import { useOpenedStore } from '@/components/store/store-provider';
import type { Stored, TableName, TableValue } from '@/lib/store/records';
import type { StoreProblem } from '@/lib/store/store-type';

/** Says why a record was not kept, for the form to show; undefined where it was. */
export type SaveRefusal = string | undefined;

const WORDS: Readonly<Record<StoreProblem<unknown>['code'], string>> = {
  conflict:
    'This was changed elsewhere, perhaps in another tab, while the form was open. Save again to put your version over it, or cancel to keep the other.',
  invalid: 'The store would not take this. Check the fields once more.',
  'not-found': 'This was removed meanwhile. Cancel and start it anew.',
  closed: 'The store is closed. Reload the page; what you typed is kept.',
};

/**
 * Saves one record from a form. The form's change is put on the record as it was when the form opened; where the
 * record has changed since, that is said first, and saving again puts the change on the newer one.
 */
export function useSave<T extends TableName>(table: T, before: Stored<TableValue[T]>) {
  const opened = useOpenedStore();
  const basis = useRef(before);
  return async (change: (record: TableValue[T]) => TableValue[T]): Promise<SaveRefusal> => {
    if (opened === null) return WORDS.closed;
    const { id, value, revision } = basis.current;
    const written = await opened.store.put(table, id, change(value), revision);
    if (written.ok) {
      // The next form may open as soon as this one closes; it must start from what was kept.
      await opened.tables.refresh(table);
      return undefined;
    }
    if (written.reason.code === 'conflict' && written.reason.theirs !== null)
      basis.current = written.reason.theirs;
    return WORDS[written.reason.code];
  };
}

/** Saves a record that was not there before. */
export function useAdd() {
  const store = useOpenedStore()?.store;
  return async <T extends TableName>(table: T, id: string, value: TableValue[T]): Promise<SaveRefusal> => {
    if (store === undefined) return WORDS.closed;
    const written = await store.put(table, id, value, null);
    return written.ok ? undefined : WORDS[written.reason.code];
  };
}
