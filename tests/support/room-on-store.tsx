import 'fake-indexeddb/auto';
import { cleanup, render } from '@testing-library/react';
import type { ReactNode } from 'react';
import { afterEach, beforeEach, vi } from 'vitest';
import { StoreProvider } from '@/components/store/store-provider';
import { ToastProvider } from '@/components/ui/toast';
import { openStore } from '@/lib/store/open-store';
import type { Store } from '@/lib/store/store-type';

export type RoomOnStore = {
  /** The database of the test under way. */
  readonly store: Store;
  /**
   * Shows what a page shows, on that database, which opens once `opened` is settled; taking it from the screen leaves
   * the database open.
   */
  readonly show: (room: ReactNode, opened?: Promise<unknown>) => void;
};

/** Gives every test of a file an empty browser database, and takes screen, database and clock away after it. */
export function roomOnStore(): RoomOnStore {
  let store: Store;
  beforeEach(async () => {
    vi.stubGlobal('indexedDB', new IDBFactory());
    store = await openStore();
  });
  afterEach(() => {
    cleanup();
    store.close();
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });
  return {
    get store() {
      return store;
    },
    show: (room, opened = Promise.resolve()) => {
      const given = { ...store, close: () => undefined };
      const open = async () => opened.then(() => given);
      render(
        <StoreProvider open={open}>
          <ToastProvider>{room}</ToastProvider>
        </StoreProvider>,
      );
    },
  };
}
