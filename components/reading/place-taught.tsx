'use client';

import { changeRecord } from '@/components/store/change-record';
import { useOpenedStore } from '@/components/store/store-provider';
import { Button } from '@/components/ui/button';
import { useToast } from '@/components/ui/toast';
import type { EventRecord } from '@/lib/store/records';
import { placeOffsetSentence } from '@/lib/words/place-offset';
import styles from './reading.module.css';
import type { PlannedNight } from './what-moved';

/** What past nights taught about the place, and the tap that plans without it. */
export function PlaceTaught({ planned }: { readonly planned: PlannedNight }) {
  const { night, plan, voice } = planned;
  const { placeOffset, event } = night.records;
  const turn = useTurn(event.id);
  if (placeOffset === undefined) return null;
  const used = night.request.placeOffset !== undefined;
  return (
    <section className={styles.row} aria-label="What past nights taught">
      <p className={styles.words}>{placeOffsetSentence(placeOffset, { plan, used }, voice)}</p>
      <div className={styles.acts}>
        <Button onClick={() => void turn(used)}>{used ? 'Plan without it' : 'Count on it'}</Button>
      </div>
    </section>
  );
}

const turned = (off: boolean) => (record: EventRecord) => ({ ...record, withoutPlaceOffset: off });

/** Switches it off or on for this night, with a way back. */
function useTurn(eventId: string): (off: boolean) => Promise<void> {
  const store = useOpenedStore()?.store;
  const say = useToast();
  return async (off) => {
    if (store === undefined) return;
    const written = await changeRecord(store, { table: 'events', id: eventId, change: turned(off) });
    if (!written.ok) return say({ text: 'That was not kept: the night was changed meanwhile. Try again.' });
    const undo = () => void changeRecord(store, { table: 'events', id: eventId, change: turned(!off) });
    say({
      text: off ? 'Planned without what past nights taught.' : 'Past nights count again.',
      act: { label: 'Undo', do: undo },
    });
  };
}
