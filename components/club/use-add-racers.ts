'use client';

import { newId } from '@/components/store/new-id';
import { useOpenedStore } from '@/components/store/store-provider';
import { useToast } from '@/components/ui/toast';
import { undoRewrite } from '@/lib/store/backup-import';
import type { Snapshot, SnapshotValues } from '@/lib/store/store-type';
import { counted } from '@/lib/words/listing';
import { type NewRacer, withNewRacers } from './new-racers';

/** Most machines an event holds. */
export const MOST_RACERS = 100;

const NOT_KEPT =
  'They were not added: the event was changed or removed meanwhile, or the store refused. Look again.';

/** Adds newcomers with their machines, all or none, and offers the way back. Answers a sentence where it could not. */
export function useAddRacers(eventId: string) {
  const opened = useOpenedStore();
  const say = useToast();
  return async (racers: readonly NewRacer[]): Promise<string | undefined> => {
    if (opened === null) return NOT_KEPT;
    const { store, tables } = opened;
    const event = await store.get('events', eventId);
    if (event === null) return NOT_KEPT;
    if (event.value.machineIds.length + racers.length > MOST_RACERS)
      return `An event holds ${MOST_RACERS} racers. Take some off the roster, or start another event.`;
    const written = await store.rewrite((current) => snapshotWith(current, eventId, racers));
    if (!written.ok) return NOT_KEPT;
    const done = written.value;
    await Promise.all([tables.refresh('machines'), tables.refresh('events')]);
    const undo = async (): Promise<void> => {
      if (!(await undoRewrite(store, done)).ok)
        say({ text: 'It could not be undone. Take them off by hand.' });
    };
    const after = done.after.events.find(({ id }) => id === eventId)?.value.machineIds.length ?? 0;
    say({
      text: `${counted(after - event.value.machineIds.length, 'racer')} added.`,
      act: { label: 'Undo', do: () => void undo() },
    });
    return undefined;
  };
}

function snapshotWith(current: Snapshot, eventId: string, racers: readonly NewRacer[]): SnapshotValues {
  const stored = current.events.find(({ id }) => id === eventId);
  if (stored === undefined) return current;
  const here = { machines: current.machines, event: stored.value };
  const { machines, event } = withNewRacers(here, racers, newId);
  return {
    ...current,
    machines: [...current.machines, ...machines],
    events: current.events.map((each) => (each.id === eventId ? { id: eventId, value: event } : each)),
  };
}
