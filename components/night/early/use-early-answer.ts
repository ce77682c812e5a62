'use client';

import { useSyncExternalStore } from 'react';
import { EARLY_ANSWER } from '@/lib/planner/early-start';

function subscribe(listener: () => void): () => void {
  addEventListener(EARLY_ANSWER, listener);
  return () => removeEventListener(EARLY_ANSWER, listener);
}

/** What the worker has drawn of the first screen; null where it has not, and on the server. */
export function useEarlyAnswer(): Element | Text | null {
  return useSyncExternalStore(
    subscribe,
    () => globalThis.heavyAirStart?.answer ?? null,
    () => null,
  );
}
