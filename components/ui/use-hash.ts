'use client';

import { useSyncExternalStore } from 'react';

function onHashChange(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/** The address's part after #, without it: a view that the back button leaves. */
export function useHash(): string {
  return useSyncExternalStore(
    onHashChange,
    () => window.location.hash.slice(1),
    () => '',
  );
}
