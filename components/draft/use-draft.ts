'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { changed, type History, startHistory, undone } from '@/lib/fields/history';
import { sameShape } from '@/lib/fields/same-shape';
import { dropDraft, keepDraft, keptDraft } from '@/lib/store/drafts';

/** A new draft from the old one; `field` null marks an act of its own, one step of undo. */
export type ChangeDraft<D> = (field: string | null, next: (draft: D) => D) => void;

export type DraftState<D> = {
  readonly value: D;
  readonly change: ChangeDraft<D>;
  readonly undo: () => void;
  readonly canUndo: boolean;
  /** Unsaved typing of an earlier visit stands in the form. */
  readonly broughtBack: boolean;
  /** Back to what the form opened with; can be undone. */
  readonly startOver: () => void;
  /** The draft is not needed any more: it was saved. */
  readonly forget: () => void;
};

type DraftStart<D> = {
  /** Under what the unsaved typing is kept; one per record. */
  readonly key: string;
  readonly initial: D;
  /** A draft with one entry in every list, to tell a draft of an older version. */
  readonly shape: D;
};

/** The draft of one form: kept in the browser with every change, undone step by step. Client only. */
export function useDraft<D>({ key, initial, shape }: DraftStart<D>): DraftState<D> {
  const [start] = useState(() => ({ initial, kept: readKept({ key, initial, shape }) }));
  const [history, setHistory] = useState<History<D>>(() => startHistory(start.kept ?? start.initial));
  const [broughtBack, setBroughtBack] = useState(start.kept !== null);
  const forgotten = useRef(false);
  const { present } = history;

  useEffect(() => {
    if (forgotten.current) return;
    if (present === start.initial) dropDraft(key);
    else keepDraft(key, present);
  }, [key, present, start]);

  const change = useCallback<ChangeDraft<D>>((field, next) => {
    setHistory((before) => changed(before, next(before.present), field));
  }, []);
  const undo = useCallback(() => setHistory(undone), []);
  const startOver = useCallback(() => {
    setHistory((before) => changed(before, start.initial, null));
    setBroughtBack(false);
  }, [start]);
  const forget = useCallback(() => {
    forgotten.current = true;
    dropDraft(key);
  }, [key]);

  return { value: present, change, undo, canUndo: history.past.length > 0, broughtBack, startOver, forget };
}

function readKept<D>({ key, initial, shape }: DraftStart<D>): D | null {
  const kept = keptDraft(key);
  if (!sameShape(shape, kept)) return null;
  return JSON.stringify(kept) === JSON.stringify(initial) ? null : kept;
}
