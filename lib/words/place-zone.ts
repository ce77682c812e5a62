import type { Instant } from '@/lib/time/instant';
import { localClock, offsetMinutes, zoneExists } from '@/lib/time/zone';

type PlaceAndEvent = {
  readonly place: string;
  readonly placeZone: string;
  readonly eventZone: string;
  /** When both clocks are read: at the first run, since they may change on different days. */
  readonly at: Instant;
};

/** A word about a place whose clocks are not those of the event; null where both show the same. */
export function placeZoneNote({ place, placeZone, eventZone, at }: PlaceAndEvent): string | null {
  if (!zoneExists(placeZone) || !zoneExists(eventZone)) return null;
  if (offsetMinutes(at, placeZone) === offsetMinutes(at, eventZone)) return null;
  const [there, here] = [localClock(at, placeZone), localClock(at, eventZone)];
  return `${place} keeps another time than the event: ${there} there (${placeZone}) is ${here} on the event’s clock (${eventZone}). If you race there, change the event’s time zone and look at the runs again.`;
}
