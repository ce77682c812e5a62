'use client';

import { useCallback, useMemo } from 'react';
import { type ToastWords, useEndToast, useToast } from '@/components/ui/toast';
import { changeRecord, putOnTop, type RecordKey, type Soon } from '@/lib/store/change-record';
import { newId } from '@/lib/store/new-id';
import type { EventRecord, MachineRecord, Stored, TableName, TableValue } from '@/lib/store/records';
import { sameValue } from '@/lib/store/same-value';
import type { Store, StoreProblem } from '@/lib/store/store-type';
import { NOT_TAKEN_BACK, notKeptSentence, savedOverSentence, takenBackSentence } from '@/lib/words/not-kept';
import { type OpenedStore, useOpening } from './store-provider';

/** Nothing where it was kept, else a sentence that says why not. */
export type WriteOutcome = string | undefined;

/** How an act is undone, where it is less than the whole record. */
export type WayBack<V> = {
  /** What the act changed: once that is another again, it stays so. */
  readonly part: (record: V) => unknown;
  readonly back: (record: V, before: V) => V;
  readonly onUndo?: () => void;
};

/** The tables whose records have a form of their own. */
export type FormTable = 'events' | 'machines';
type Seen<T extends TableName> = {
  readonly table: T;
  readonly stored: Stored<TableValue[T]>;
  /** True once it was said that another tab deleted it: saving puts it back. Absent: it was there. */
  readonly gone?: boolean;
};
type Over<T extends TableName> = {
  readonly refused: WriteOutcome;
  readonly gone: boolean;
  /** What the next try is based on. */
  readonly stored: Stored<TableValue[T]>;
};

/** What to say when it is kept; null where the page itself shows it, and undo is not offered. */
export type Words = string | null;

/** What is said, and what the ear hears after it because the page shows it to the eye. */
export type Spoken = Required<Pick<ToastWords, 'text' | 'spoken'>>;

/** Every way in which a person writes to the store. Each says what was done, offers Undo, and says why it was not kept. */
export type Write = {
  /** `id` where somebody has to know it. */
  readonly add: <T extends TableName>(
    table: T,
    value: TableValue[T],
    words: Words,
    id?: string,
  ) => Promise<WriteOutcome>;
  /** Changes a record on top of what is stored now, whatever that is. */
  readonly change: <T extends TableName>(
    key: RecordKey<T>,
    change: (current: TableValue[T]) => Soon<TableValue[T]>,
    words: string | Spoken,
    wayBack?: WayBack<TableValue[T]>,
  ) => Promise<WriteOutcome>;
  readonly remove: <T extends TableName>(
    table: T,
    stored: Stored<TableValue[T]>,
    words: string,
  ) => Promise<WriteOutcome>;
  /**
   * Changes the very record that a form was opened on. Where another tab wrote meanwhile nothing is overwritten unseen:
   * the sentence says so, and the next try goes on top of what stands there now.
   */
  readonly over: <T extends FormTable>(
    seen: Seen<T>,
    change: (record: TableValue[T]) => TableValue[T],
    words: Words,
  ) => Promise<Over<T>>;
};

/** The one door for what a person does. What is done before the store is open waits for it. */
export function useWrite(): Write {
  const opening = useOpening();
  const say = useToast();
  const begin = useBeginning();
  return useMemo(
    () => onceOpen({ write: opening.then((opened) => writeTo(opened, say)), begin }),
    [opening, say, begin],
  );
}

/**
 * What an act with words begins with: what is said of the act before goes at once. Its Undo would else stand there until
 * this one is kept, and whoever takes this one back by it takes back the other.
 */
export function useBeginning(): (words: unknown) => void {
  const end = useEndToast();
  return useCallback(
    (words) => {
      if (words !== null) end();
    },
    [end],
  );
}

type Doing = { readonly write: Promise<Write>; readonly begin: (words: unknown) => void };

const onceOpen = ({ write, begin }: Doing): Write => ({
  add: async (...asked) => {
    begin(asked[2]);
    return (await write).add(...asked);
  },
  change: async (...asked) => {
    begin(asked[2]);
    return (await write).change(...asked);
  },
  remove: async (...asked) => {
    begin(asked[2]);
    return (await write).remove(...asked);
  },
  over: async (...asked) => {
    begin(asked[2]);
    return (await write).over(...asked);
  },
});

export type Undone = { readonly ok: boolean };
export type Say = (words: ToastWords) => void;

/** How an act ends. What has no words is shown, or refused, by the form that asked for it. */
export function endings({ tables }: OpenedStore, say: Say) {
  const wayBackOf = (undo: () => Promise<Undone>, words: Words) => async (): Promise<void> => {
    if (!(await undo()).ok) return say({ text: NOT_TAKEN_BACK });
    // The page shows it as it was; who goes by ear is told.
    if (words !== null) say({ text: '', spoken: takenBackSentence(words) });
  };
  return {
    wayBackOf,
    refuse: (sentence: string, words: unknown): string => {
      if (words !== null) say({ text: sentence });
      return sentence;
    },
    /** Whoever goes on when this is said must find it there: a form opened on the record before would be refused. */
    done: async (words: Words | Spoken, undo: () => Promise<Undone>): Promise<undefined> => {
      await tables.settled();
      if (words === null) return;
      const told = typeof words === 'string' ? { text: words } : words;
      say({ ...told, act: { label: 'Undo', do: wayBackOf(undo, told.text) } });
    },
  };
}

/**
 * What is on the screen is what is stored, but for a moment: the first try goes on top of that, spares a reading and is
 * shown at once. Where another tab wrote meanwhile it is refused, and then the store itself is asked.
 */
function fromScreenFirst({ store, tables }: OpenedStore): Pick<Store, 'get' | 'put'> {
  let tries = 0;
  return {
    put: (...asked) => (tries === 1 ? tables.putAtOnce : store.put)(...asked),
    get: async <T extends TableName>(table: T, id: string) => {
      tries += 1;
      const known = tries === 1 ? tables.read(table)?.find((row) => row.id === id) : undefined;
      return known ?? store.get(table, id);
    },
  };
}

export function writeTo(opened: OpenedStore, say: Say): Write {
  const { store } = opened;
  const { refuse, done } = endings(opened, say);
  return {
    add: async (table, value, words, id = newId()) => {
      const written = await store.put(table, id, value, null);
      if (!written.ok) return refuse(notKeptSentence(written.reason), words);
      return done(words, () => store.remove(table, id, written.value.revision));
    },
    change: async (key, change, words, wayBack = whole()) => {
      const written = await changeRecord(fromScreenFirst(opened), key, change);
      if (!written.ok) return refuse(notKeptSentence(written.reason), words);
      const { before, after } = written.value;
      const { part, back, onUndo } = wayBack;
      return done(words, async () => {
        onUndo?.();
        const undone = await putOnTop(store, key, (record) =>
          record !== null && sameValue(part(record), part(after.value)) ? back(record, before) : null,
        );
        return { ok: undone.ok && undone.value !== null };
      });
    },
    remove: async (table, stored, words) => {
      const removed = await store.remove(table, stored.id, stored.revision);
      if (!removed.ok) return refuse(notKeptSentence(removed.reason), words);
      return done(words, () => store.restore(table, removed.value));
    },
    over: async ({ table, stored, gone = false }, change, words) => {
      const { id, value, revision } = stored;
      const written = await store.put(table, id, change(value), gone ? null : revision);
      if (!written.ok) {
        const theirs = theirsOf(written.reason);
        const deleted = written.reason.code === 'conflict' && theirs === null;
        return { refused: overSentence(written.reason), stored: theirs ?? stored, gone: deleted };
      }
      const after = written.value;
      await done(words, () =>
        gone ? store.remove(table, id, after.revision) : store.put(table, id, value, after.revision),
      );
      return { refused: undefined, stored: after, gone: false };
    },
  };
}

/** The whole record goes back, where nobody changed it again. */
const whole = <V>(): WayBack<V> => ({ part: (record) => record, back: (_, before) => before });

const theirsOf = <V>(problem: StoreProblem<V>): Stored<V> | null =>
  problem.code === 'conflict' ? problem.theirs : null;

const overSentence = (problem: StoreProblem<EventRecord | MachineRecord>): string =>
  problem.code === 'conflict' ? savedOverSentence(problem.theirs) : notKeptSentence(problem);
