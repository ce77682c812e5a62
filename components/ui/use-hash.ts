'use client';

import { useSyncExternalStore } from 'react';

function onHashChange(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/**
 * Goes on to a part of the page and leaves the focus where it is, as at the opener of a dialog that is being shut: an
 * address that is followed takes the focus away where its part is there.
 */
export function turnTo(hash: string): void {
  window.history.pushState(null, '', `#${hash}`);
  window.dispatchEvent(new HashChangeEvent('hashchange'));
}

/**
 * From a form to a part of the page. A form may end after the address has gone on, since the browser says late that a
 * dialog is shut, and saving takes its time: what was opened meanwhile stays open.
 */
export function turnBack(form: string, to: string): void {
  if (readHash() === form) turnTo(to);
}

/** The address's part after #, without it: a view that the back button leaves. */
export function useHash(): string {
  return useSyncExternalStore(onHashChange, readHash, () => '');
}

const readHash = () => window.location.hash.slice(1);
