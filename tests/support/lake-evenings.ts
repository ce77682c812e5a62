import type { EventRecord, Stored } from '@/lib/store/records';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { demoRecords } from '../night/night-case';

export const LAKE = { name: 'Lake', latitude: 46.79, longitude: -92.1 };

export type LakeEvening = {
  readonly daysAgo: number;
  /** What was read, minus what the hours say [K]. */
  readonly off: number;
  readonly place?: typeof LAKE;
  readonly demo?: boolean;
};

const DAY_MS = 24 * HOUR_MS;

/** The demo's evening some days ago at a lake, with two readings a little off what its hours say. */
export function lakeEvening(
  id: string,
  { daysAgo, off, place = LAKE, demo = false }: LakeEvening,
  now: Instant,
): Stored<EventRecord> {
  const { event } = demoRecords(instant(now - daysAgo * DAY_MS));
  const value = { ...event.value, demo, event: { ...event.value.event, name: `Lake ${id}`, place } };
  const hours = value.typed!.hours.map((hour) => ({ at: Date.parse(hour.time), celsius: hour.temperatureC }));
  const first = Date.parse(value.event.runs[0]!.start);
  const readings = hours
    .filter(({ at }) => at >= first)
    .slice(0, 2)
    .map(({ at, celsius }, i) => ({
      id: `${id}${i}`,
      time: isoUtc(instant(at)),
      temperatureC: celsius + off,
      confirmed: false,
    }));
  return { ...event, id, value: { ...value, readings } };
}
