'use client';

import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';
import type { Store, StoreHealth } from '@/lib/store/store-type';
import { type TableCache, tableCache } from '@/lib/store/table-cache';

/** The store as it is for those who only look. */
export type StoreReads = Pick<Store, 'get' | 'snapshot' | 'retry'>;
export type OpenedStore = { readonly store: Store; readonly tables: TableCache };
type StoreState = { readonly opened: OpenedStore | null; readonly health: StoreHealth | null };

const StoreContext = createContext<StoreState>({ opened: null, health: null });

/** Loaded apart from the page, so that words stand on the screen before the database code has arrived. */
const loadStore = () => import('@/lib/store/open-store');

// Asked for while the page around it is still waking up, not after.
if (typeof window !== 'undefined') void loadStore();

async function openBrowserStore(): Promise<Store> {
  const { openStore } = await loadStore();
  return openStore();
}

type StoreProviderProps = { readonly open?: () => Promise<Store>; readonly children: ReactNode };

export function StoreProvider({ open = openBrowserStore, children }: StoreProviderProps) {
  const [state, setState] = useState<StoreState>({ opened: null, health: null });
  const [failure, setFailure] = useState<unknown>(null);
  useEffect(() => {
    let stopped = false;
    let opened: Store | null = null;
    open().then((store) => {
      opened = store;
      if (stopped) return store.close();
      const tables = tableCache(store);
      setState({ opened: { store: { ...store, put: tables.put }, tables }, health: store.health() });
      store.subscribe((change) => {
        if (change.kind === 'health') setState((before) => ({ ...before, health: change.health }));
      });
    }, setFailure);
    return () => {
      stopped = true;
      opened?.close();
    };
  }, [open]);
  // The nearest error boundary says it in words.
  if (failure !== null) throw failure;
  return <StoreContext value={state}>{children}</StoreContext>;
}

/** As below, for the doors beside this file: they alone may write. */
export function useOpenedStore(): OpenedStore | null {
  return useContext(StoreContext).opened;
}

/** null while the store is being opened, and on the server. */
export function useStoreReads(): StoreReads | null {
  return useOpenedStore()?.store ?? null;
}

export function useStoreHealth(): StoreHealth | null {
  return useContext(StoreContext).health;
}
