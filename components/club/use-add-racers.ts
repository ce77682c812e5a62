'use client';

import { useWrite, type WriteOutcome } from '@/components/store/use-write';
import { newId } from '@/lib/store/new-id';
import type { Rewritten, Snapshot, SnapshotValues } from '@/lib/store/store-type';
import { counted } from '@/lib/words/listing';
import { MOST_RACERS, type NewRacer, withNewRacers } from './new-racers';

/** Adds newcomers with their machines, all or none, and offers the way back. Answers a sentence where it could not. */
export function useAddRacers(eventId: string) {
  const write = useWrite();
  return async (racers: readonly NewRacer[]): Promise<WriteOutcome> => {
    const added = await write.all(
      (current) => withRacers(current, eventId, racers),
      (done) => `${counted(onRoster(done.after, eventId) - onRoster(done.before, eventId), 'racer')} added.`,
    );
    return added.ok ? undefined : added.reason;
  };
}

const onRoster = ({ events }: Rewritten['after'], eventId: string): number =>
  events.find(({ id }) => id === eventId)?.value.machineIds.length ?? 0;

/** With the newcomers, or why they cannot come. */
function withRacers(
  current: Snapshot,
  eventId: string,
  racers: readonly NewRacer[],
): SnapshotValues | string {
  const stored = current.events.find(({ id }) => id === eventId);
  if (stored === undefined) return 'They were not added: the event was removed meanwhile. Look again.';
  if (stored.value.machineIds.length + racers.length > MOST_RACERS)
    return `An event holds ${MOST_RACERS} racers. Take some off the roster, or start another event.`;
  const { machines, event } = withNewRacers(
    { machines: current.machines, event: stored.value },
    racers,
    newId,
  );
  return {
    ...current,
    machines: [...current.machines, ...machines],
    events: current.events.map((each) => (each.id === eventId ? { id: eventId, value: event } : each)),
  };
}
