'use client';

import { useState } from 'react';
import { usePreferences } from '@/components/store/use-preferences';
import { useWriteAll } from '@/components/store/use-write-all';
import { type KeptNight, keptNight } from '@/lib/share/kept-night';
import { withoutOrigin } from '@/lib/share/origin';
import type { SharedNight } from '@/lib/share/shared-night';
import { newId } from '@/lib/store/new-id';
import type { Snapshot, SnapshotValues } from '@/lib/store/store-type';

export type Keeping =
  | { readonly status: 'not-kept' }
  | { readonly status: 'kept'; readonly undo: () => Promise<void> }
  | { readonly status: 'refused' };

/**
 * Adds a shared night to the records of this browser, all of it or nothing, and takes it back.
 *
 * @param again it is here already: what is added now is another one
 */
export function useKeep(night: SharedNight, again: boolean) {
  const writeAll = useWriteAll();
  const { preferences, changePreferences } = usePreferences();
  const [keeping, setKeeping] = useState<Keeping>({ status: 'not-kept' });
  const keep = async () => {
    const kept = keptNight(again ? withoutOrigin(night) : night, newId);
    const done = await writeAll((current) => withNight(current, kept), null);
    if (!done.ok) return setKeeping({ status: 'refused' });
    const chosenBefore = { eventId: preferences.eventId, machineId: preferences.machineId };
    await changePreferences({ eventId: kept.event.id, machineId: kept.machines[0]?.id ?? null });
    const undo = async () => {
      await changePreferences(chosenBefore);
      await done.value();
    };
    setKeeping({ status: 'kept', undo });
  };
  const undo = async () => {
    if (keeping.status !== 'kept') return;
    await keeping.undo();
    setKeeping({ status: 'not-kept' });
  };
  return { keeping, keep, undo };
}

const withNight = (current: Snapshot, { machines, forecast, event }: KeptNight): SnapshotValues => ({
  ...current,
  // A machine that is here already stays as it is here.
  machines: [
    ...current.machines,
    ...machines.filter(({ id }) => current.machines.every((known) => known.id !== id)),
  ],
  forecasts: forecast === null ? current.forecasts : [...current.forecasts, forecast],
  events: [...current.events, event],
});
