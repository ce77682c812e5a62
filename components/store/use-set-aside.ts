'use client';

import { useMemo } from 'react';
import { useEndToast, useToast } from '@/components/ui/toast';
import type { SetAside } from '@/lib/store/set-aside-record';
import type { Snapshot, SnapshotValues } from '@/lib/store/store-type';
import { undoRewrite } from '@/lib/store/undo-rewrite';
import { NONE_KEPT } from '@/lib/words/not-kept';
import { type OpenedStore, useOpening } from './store-provider';
import { endings, type Say, type WriteOutcome } from './use-write';

/** What a person does with something that was set aside. `placed` answers null where it fits nowhere any more. */
export type SetAsideActs = {
  readonly takeBack: (
    aside: SetAside,
    placed: (current: Snapshot) => SnapshotValues | null,
  ) => Promise<WriteOutcome>;
  readonly letGo: (aside: SetAside) => Promise<WriteOutcome>;
};

/** The same door for what was set aside; only its own page needs it. */
export function useSetAside(): SetAsideActs {
  const opening = useOpening();
  const say = useToast();
  const end = useEndToast();
  return useMemo(() => {
    const acts = opening.then((opened) => setAsideActs(opened, say));
    return {
      takeBack: async (...asked) => {
        end();
        return (await acts).takeBack(...asked);
      },
      letGo: async (...asked) => {
        end();
        return (await acts).letGo(...asked);
      },
    };
  }, [opening, say, end]);
}

function setAsideActs(opened: OpenedStore, say: Say): SetAsideActs {
  const { store } = opened;
  const { refuse, done } = endings(opened, say);
  return {
    takeBack: async (aside, placed) => {
      let fits = true;
      const written = await store.rewrite((current) => {
        const next = placed(current);
        fits = next !== null;
        return next ?? current;
      });
      if (!fits) return refuse('It has no place any more: what it belongs to is gone or has changed.', '');
      if (!written.ok) return refuse(NONE_KEPT, '');
      await store.dropSetAside(aside.key);
      return done('It is taken back.', async () => {
        const undone = await undoRewrite(store, written.value);
        if (undone.ok) await store.returnSetAside(aside);
        return undone;
      });
    },
    letGo: async (aside) => {
      await store.dropSetAside(aside.key);
      return done('It is let go.', async () => {
        await store.returnSetAside(aside);
        return { ok: true };
      });
    },
  };
}
