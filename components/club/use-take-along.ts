'use client';

import { useWriteAll } from '@/components/store/use-write-all';
import { withTakenAlong } from '@/lib/night/taken-along';
import { MOST_RACERS } from '@/lib/share/new-racers';
import { newId } from '@/lib/store/new-id';
import { LAST_ROSTER, type PastRoster } from '@/lib/words/last-roster';
import { counted } from '@/lib/words/listing';

/** Puts everybody of another event on the roster of this one. Answers a sentence where it could not. */
export function useTakeAlong(eventId: string) {
  const writeAll = useWriteAll();
  return async ({ value: fromId, names }: PastRoster): Promise<string | undefined> => {
    const taken = await writeAll(
      (current) => {
        const from = current.events.find(({ id }) => id === fromId)?.value;
        const here = current.events.find(({ id }) => id === eventId)?.value;
        if (from === undefined || here === undefined) return LAST_ROSTER.gone;
        const value = withTakenAlong(here, from, newId);
        if (value.machineIds.length > MOST_RACERS) return LAST_ROSTER.tooMany(MOST_RACERS);
        return {
          ...current,
          events: current.events.map((each) => (each.id === eventId ? { ...each, value } : each)),
        };
      },
      `${counted(names.length, 'racer')} added.`,
    );
    return taken.ok ? undefined : taken.reason;
  };
}
