'use client';

import { useState } from 'react';
import { newId } from '@/components/store/new-id';
import { useOpenedStore } from '@/components/store/store-provider';
import { usePreferences } from '@/components/store/use-preferences';
import { type KeptNight, keptNight } from '@/lib/share/kept-night';
import type { SharedNight } from '@/lib/share/shared-night';
import type { Preferences, Stored, TableName } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';

type Added = { readonly table: TableName; readonly id: string; readonly revision: number };
type Chosen = Pick<Preferences, 'eventId' | 'machineId'>;

export type Keeping =
  | { readonly status: 'not-kept' }
  | { readonly status: 'kept'; readonly added: readonly Added[]; readonly chosenBefore: Chosen }
  | { readonly status: 'refused' };

/** Adds a shared night to the records of this browser, all of it or nothing, and takes it back. */
export function useKeep(night: SharedNight) {
  const store = useOpenedStore()?.store ?? null;
  const { preferences, changePreferences } = usePreferences();
  const [keeping, setKeeping] = useState<Keeping>({ status: 'not-kept' });
  const keep = async () => {
    if (store === null) return;
    const kept = keptNight(night, newId);
    const added = await addAll(store, kept);
    if (added === null) return setKeeping({ status: 'refused' });
    const chosenBefore = { eventId: preferences.eventId, machineId: preferences.machineId };
    await changePreferences({ eventId: kept.event.id, machineId: kept.machines[0]?.id ?? null });
    setKeeping({ status: 'kept', added, chosenBefore });
  };
  const undo = async () => {
    if (store === null || keeping.status !== 'kept') return;
    await changePreferences(keeping.chosenBefore);
    await removeAll(store, keeping.added);
    setKeeping({ status: 'not-kept' });
  };
  return { keeping, keep, undo, ready: store !== null };
}

async function addAll(
  store: Store,
  { machines, forecast, event }: KeptNight,
): Promise<readonly Added[] | null> {
  const added: Added[] = [];
  const take = (table: TableName, stored: Stored<unknown>) =>
    added.push({ table, id: stored.id, revision: stored.revision });
  for (const { id, value } of machines) {
    const written = await store.put('machines', id, value, null);
    if (!written.ok) return giveUp(store, added);
    take('machines', written.value);
  }
  if (forecast !== null) {
    const written = await store.put('forecasts', forecast.id, forecast.value, null);
    if (!written.ok) return giveUp(store, added);
    take('forecasts', written.value);
  }
  const written = await store.put('events', event.id, event.value, null);
  if (!written.ok) return giveUp(store, added);
  take('events', written.value);
  return added;
}

async function giveUp(store: Store, added: readonly Added[]): Promise<null> {
  await removeAll(store, added);
  return null;
}

/** What was changed since by hand stays. */
async function removeAll(store: Store, added: readonly Added[]): Promise<void> {
  for (const { table, id, revision } of added) await store.remove(table, id, revision);
}
