import { clockOf } from '@/lib/fields/clock-text';
import { clockFace, type HourStyle } from '@/lib/time/zone';
import type { TrailDraft } from './trail-rows';

const FACES: readonly HourStyle[] = ['12', '24'];

/** The same draft with its times as another clock shows them; a time in words of the person's own stays as it was typed. */
export function draftInClock(draft: TrailDraft, hours: HourStyle): TrailDraft {
  const turned = (text: string): string => {
    const clock = clockOf(text);
    const written = clock !== null && FACES.some((face) => clockFace(clock, face) === text);
    return written ? clockFace(clock, hours) : text;
  };
  const { ride } = draft;
  return {
    ...draft,
    ride: {
      ...ride,
      startClock: turned(ride.startClock),
      places: ride.places.map((place) => ({ ...place, clock: turned(place.clock) })),
      hours: ride.hours.map((hour) => ({ ...hour, clock: turned(hour.clock) })),
    },
  };
}
