import { hoursProvenance } from '@/lib/hours/provenance';
import type { Night } from '@/lib/night/night';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { counted } from './listing';
import { hoursSentence } from './provenance';

type Asked = Pick<Night, 'series' | 'request' | 'records'>;

/** What the plan rests on, and what was read at the track since. */
export function dataSentence({ series, request, records }: Asked, now: Instant, zone: ClockZone): string {
  const from = records.event.value.demo
    ? 'Place, racer and weather of this night are invented.'
    : hoursSentence(hoursProvenance(series), now, { zone, from: now });
  const last = request.readings.reduce<Instant | null>((a, { at }) => (a === null || at > a ? at : a), null);
  if (last === null) return from;
  return `${from} ${counted(request.readings.length, 'reading')}, the last at ${localClock(last, zone)}.`;
}
