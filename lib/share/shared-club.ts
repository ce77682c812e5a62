import * as z from 'zod/mini';
import { eventSchema } from '@/lib/contract/event';
import { sharedLabels } from './shared-labels';
import { type SharedNight, sharedMachineSchema, sharedNightSchema } from './shared-night';

/** Most racers of one club link: as many as an event holds. */
const MOST_RACERS_SHARED = 100;

/** The night of a whole club as it travels in one link, for everybody to pick a name from. */
export const sharedClubSchema = z.extend(z.omit(sharedNightSchema, { machines: true }), {
  racers: z
    .array(
      z.extend(sharedMachineSchema, {
        /** Of its class; absent where it runs when everybody does. */
        runs: z.optional(eventSchema.shape.runs),
      }),
    )
    .check(z.minLength(1), z.maxLength(MOST_RACERS_SHARED)),
});

export type SharedClub = z.output<typeof sharedClubSchema>;

/** What everybody is called, in the order of the roster; no two alike. */
export function sharedClubLabels({ racers }: SharedClub): readonly string[] {
  return sharedLabels(racers);
}

/** The night of one of them by itself; null where there is no such place on the list. */
export function nightOfRacer({ racers, event, ...night }: SharedClub, place: number): SharedNight | null {
  const racer = racers[place];
  if (racer === undefined) return null;
  const { runs = event.runs, ...machine } = racer;
  return { ...night, event: { ...event, runs }, machines: [machine] };
}
