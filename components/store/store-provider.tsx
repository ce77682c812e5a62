'use client';

import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import type { Store, StoreHealth } from '@/lib/store/store-type';
import { type TableCache, tableCache } from '@/lib/store/table-cache';

/** The store as it is for those who only look. */
export type StoreReads = Pick<Store, 'get' | 'snapshot' | 'retry'>;
export type OpenedStore = { readonly store: Store; readonly tables: TableCache };
type StoreState = { readonly opened: OpenedStore | null; readonly health: StoreHealth | null };
type StoreGiven = StoreState & { readonly opening: Promise<OpenedStore> };

const never = new Promise<OpenedStore>(() => undefined);
const StoreContext = createContext<StoreGiven>({ opened: null, health: null, opening: never });

/** Loaded apart from the page, so that words stand on the screen before the database code has arrived. */
const loadStore = () => import('@/lib/store/open-store');

// Asked for while the page around it is still waking up, not after.
if (typeof window !== 'undefined') void loadStore();

async function openBrowserStore(): Promise<Store> {
  const { openStore } = await loadStore();
  return openStore();
}

function awaited() {
  let isOpen: (opened: OpenedStore) => void = () => undefined;
  const opening = new Promise<OpenedStore>((resolve) => {
    isOpen = resolve;
  });
  return { opening, isOpen };
}

type StoreProviderProps = { readonly open?: () => Promise<Store>; readonly children: ReactNode };

export function StoreProvider({ open = openBrowserStore, children }: StoreProviderProps) {
  const [state, setState] = useState<StoreState>({ opened: null, health: null });
  const [failure, setFailure] = useState<unknown>(null);
  const [{ opening, isOpen }] = useState(awaited);
  useEffect(() => {
    let stopped = false;
    let opened: Store | null = null;
    open().then((store) => {
      opened = store;
      if (stopped) return store.close();
      const tables = tableCache(store);
      const usable = { store: { ...store, put: tables.put }, tables };
      setState({ opened: usable, health: store.health() });
      isOpen(usable);
      store.subscribe((change) => {
        if (change.kind === 'health') setState((before) => ({ ...before, health: change.health }));
      });
    }, setFailure);
    return () => {
      stopped = true;
      opened?.close();
    };
  }, [open, isOpen]);
  const given = useMemo(() => ({ ...state, opening }), [state, opening]);
  // The nearest error boundary says it in words.
  if (failure !== null) throw failure;
  return <StoreContext value={given}>{children}</StoreContext>;
}

/** As below, for the doors beside this file: they alone may write. */
export function useOpenedStore(): OpenedStore | null {
  return useContext(StoreContext).opened;
}

/** For what a person does before the store is open: it waits, and is not lost. */
export function useOpening(): Promise<OpenedStore> {
  return useContext(StoreContext).opening;
}

/** null while the store is being opened, and on the server. */
export function useStoreReads(): StoreReads | null {
  return useOpenedStore()?.store ?? null;
}

export function useStoreHealth(): StoreHealth | null {
  return useContext(StoreContext).health;
}
