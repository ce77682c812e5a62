'use client';

import { useMemo } from 'react';
import { type ToastWords, useToast } from '@/components/ui/toast';
import type { Stored, TableName, TableValue } from '@/lib/store/records';
import { changeRecord } from './change-record';
import { newId } from './new-id';
import { type OpenedStore, useOpenedStore } from './store-provider';

/** Nothing where it was kept, else a sentence that says why not. */
export type WriteOutcome = string | undefined;

export type Write = {
  readonly add: <T extends TableName>(table: T, value: TableValue[T], words: string) => Promise<WriteOutcome>;
  /** Changes a record on top of what is stored now, whatever that is. */
  readonly change: <T extends TableName>(
    stored: { readonly table: T; readonly id: string },
    change: (current: TableValue[T]) => TableValue[T],
    words: string,
  ) => Promise<WriteOutcome>;
  readonly remove: <T extends TableName>(
    table: T,
    stored: Stored<TableValue[T]>,
    words: string,
  ) => Promise<WriteOutcome>;
};

const NOT_KEPT = 'That was not kept: it was changed or removed meanwhile. Look again and repeat it.';

/** Writes, says so, and offers the way back. Every act of these can be undone. null until the store is open. */
export function useWrite(): Write | null {
  const opened = useOpenedStore();
  const say = useToast();
  return useMemo(() => (opened === null ? null : writeTo(opened, say)), [opened, say]);
}

type Done = {
  readonly table: TableName;
  readonly text: string;
  readonly undo: () => Promise<{ readonly ok: boolean }>;
};

function writeTo({ store, tables }: OpenedStore, say: (words: ToastWords) => void): Write {
  const refuse = (): WriteOutcome => {
    say({ text: NOT_KEPT });
    return NOT_KEPT;
  };
  const done = async ({ table, text, undo }: Done): Promise<WriteOutcome> => {
    // Whoever goes on when this is said must find it there: a form opened on the record before would be refused.
    await tables.refresh(table);
    const back = async (): Promise<void> => {
      if (!(await undo()).ok) say({ text: 'It was changed again meanwhile, so it stays as it is now.' });
    };
    say({ text, act: { label: 'Undo', do: () => void back() } });
    return undefined;
  };
  return {
    add: async (table, value, words) => {
      const id = newId();
      const written = await store.put(table, id, value, null);
      if (!written.ok) return refuse();
      return done({ table, text: words, undo: () => store.remove(table, id, written.value.revision) });
    },
    change: async ({ table, id }, change, words) => {
      const written = await changeRecord(store, { table, id, change });
      if (!written.ok) return refuse();
      const { before, after } = written.value;
      return done({ table, text: words, undo: () => store.put(table, id, before, after.revision) });
    },
    remove: async (table, stored, words) => {
      const removed = await store.remove(table, stored.id, stored.revision);
      if (!removed.ok) return refuse();
      return done({ table, text: words, undo: () => store.restore(table, removed.value) });
    },
  };
}
