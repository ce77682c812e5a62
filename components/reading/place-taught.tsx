'use client';

import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { placeOffsetSentence } from '@/lib/words/place-offset';
import type { PlannedNight } from '@/lib/words/what-moved';
import styles from './reading.module.css';

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

/** Switches it off or on for this night, with a way back. */
function useTurn(eventId: string): (off: boolean) => Promise<unknown> {
  const write = useWrite();
  return (off) =>
    write.change(
      { table: 'events', id: eventId },
      (record) => ({ ...record, withoutPlaceOffset: off }),
      off ? 'Planned without what past nights taught.' : 'Past nights count again.',
      {
        part: ({ withoutPlaceOffset }) => withoutPlaceOffset,
        back: (record) => ({ ...record, withoutPlaceOffset: !off }),
      },
    );
}
