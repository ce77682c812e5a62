'use client';

import { useWrite, type WriteOutcome } from '@/components/store/use-write';
import { type NewRacer, withRacersAdded } from '@/lib/share/new-racers';
import { newId } from '@/lib/store/new-id';
import type { Snapshot } from '@/lib/store/store-type';
import { counted } from '@/lib/words/listing';

/** Adds newcomers with their machines, all or none, and offers the way back. Answers a sentence where it could not. */
export function useAddRacers(eventId: string) {
  const write = useWrite();
  return async (racers: readonly NewRacer[]): Promise<WriteOutcome> => {
    const added = await write.all(
      (current) => withRacersAdded(current, { eventId, racers, newId }),
      (done) => `${counted(onRoster(done.after, eventId) - onRoster(done.before, eventId), 'racer')} added.`,
    );
    return added.ok ? undefined : added.reason;
  };
}

const onRoster = ({ events }: Snapshot, eventId: string): number =>
  events.find(({ id }) => id === eventId)?.value.machineIds.length ?? 0;
