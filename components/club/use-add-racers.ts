'use client';

import { useWriteAll } from '@/components/store/use-write-all';
import { type NewRacer, withRacersAdded } from '@/lib/share/new-racers';
import { newId } from '@/lib/store/new-id';
import type { Snapshot } from '@/lib/store/store-type';
import { counted } from '@/lib/words/listing';

/** Adds newcomers with their machines, all or none, and offers the way back. Answers a sentence where it could not. */
export function useAddRacers(eventId: string) {
  const writeAll = useWriteAll();
  return async (racers: readonly NewRacer[]): Promise<string | undefined> => {
    const added = await writeAll(
      (current) => withRacersAdded(current, { eventId, racers, newId }),
      (done) => `${counted(onRoster(done.after, eventId) - onRoster(done.before, eventId), 'racer')} added.`,
    );
    return added.ok ? undefined : added.reason;
  };
}

const onRoster = ({ events }: Snapshot, eventId: string): number =>
  events.find(({ id }) => id === eventId)?.value.machineIds.length ?? 0;
