'use client';

import { useCallback } from 'react';
import { useToast } from '@/components/ui/toast';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Rewritten, Snapshot, SnapshotValues } from '@/lib/store/store-type';
import { undoRewrite } from '@/lib/store/undo-rewrite';
import { NONE_KEPT } from '@/lib/words/not-kept';
import { type OpenedStore, useOpening } from './store-provider';
import { endings, type Say, type Undone, useBeginning, type Words } from './use-write';

/** Many records, all or none: what is to stand, or a sentence why nothing may. Hands back the way back. */
export type WriteAll = (
  change: (current: Snapshot) => SnapshotValues | string,
  words: Words | ((done: Rewritten) => string),
) => Promise<Result<() => Promise<void>, string>>;

/** The same door for what concerns many records; by itself, since the night page never needs it. */
export function useWriteAll(): WriteAll {
  const opening = useOpening();
  const say = useToast();
  const begin = useBeginning();
  return useCallback(
    async (...asked) => {
      begin(asked[1]);
      return writeAllTo(await opening, say)(...asked);
    },
    [opening, say, begin],
  );
}

export function writeAllTo(opened: OpenedStore, say: Say): WriteAll {
  const { store } = opened;
  const { wayBackOf, refuse, done } = endings(opened, say);
  return async (change, words) => {
    let refusal: string | null = null;
    const written = await store.rewrite((current) => {
      const next = change(current);
      refusal = typeof next === 'string' ? next : null;
      return typeof next === 'string' ? current : next;
    });
    if (!written.ok || refusal !== null) return fail(refuse(refusal ?? NONE_KEPT, words));
    const undo = (): Promise<Undone> => undoRewrite(store, written.value);
    const told = typeof words === 'function' ? words(written.value) : words;
    await done(told, undo);
    return ok(wayBackOf(undo, told));
  };
}
