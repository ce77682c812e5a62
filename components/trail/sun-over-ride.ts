import { readCoordinate } from '@/components/event/coordinate';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { sunEvents } from '@/lib/time/sun';
import type { Ride } from '@/lib/trail/ride';
import type { RideDraft } from './trail-draft';

/** Sunrises and sunsets around a ride whose start is known: a forecast's error forgets faster across them. */
export function sunOverRide(draft: RideDraft, ride: Ride | null): readonly Instant[] {
  const latitude = readCoordinate(draft.latitude, 'latitude');
  const longitude = readCoordinate(draft.longitude, 'longitude');
  const [first, last] = [ride?.stops[0], ride?.stops.at(-1)];
  if (latitude === null || longitude === null || first === undefined || last === undefined) return [];
  const span = { from: instant(first.arrive - 6 * HOUR_MS), to: instant(last.leave + 6 * HOUR_MS) };
  return sunEvents(span, { latitude, longitude })
    .filter(({ kind }) => kind === 'sunrise' || kind === 'sunset')
    .map(({ at }) => at);
}
