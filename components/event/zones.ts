import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock, offsetMinutes, zoneExists, zoneName } from '@/lib/time/zone';

/** Every zone this device knows; an old browser that cannot list them still knows its own. */
export function knownZones(): readonly string[] {
  const zones =
    typeof Intl.supportedValuesOf === 'function' ? Intl.supportedValuesOf('timeZone') : [deviceZone()];
  return zones.includes('UTC') ? zones : [...zones, 'UTC'];
}

/** The device's own zone; UTC where it cannot say. */
export function deviceZone(): string {
  const zone: string | undefined = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return zone !== undefined && zoneExists(zone) ? zone : 'UTC';
}

const plain = (text: string): string => text.toLowerCase().replace(/[_/]+/g, ' ').trim();

/** Zones with every typed word in their name, those that start with the first word of a city first. */
export function matchingZones(query: string, zones: readonly string[]): readonly string[] {
  const words = plain(query)
    .split(/\s+/)
    .filter((word) => word !== '');
  const matching = zones.filter((zone) => words.every((word) => plain(zone).includes(word)));
  const [first = ''] = words;
  const startsCity = (zone: string): boolean => plain(zone.split('/').at(-1) ?? zone).startsWith(first);
  return [...matching.filter(startsCity), ...matching.filter((zone) => !startsCity(zone))];
}

/** "Track time is 19:42, 1 hour ahead of this device." Nothing for a zone that does not exist. */
export function trackTimeSentence(clockZone: ClockZone, device: string, now: Instant): string | null {
  const zone = zoneName(clockZone);
  if (!zoneExists(zone)) return null;
  const ahead = offsetMinutes(now, zone) - offsetMinutes(now, device);
  const clock = `Track time is ${localClock(now, clockZone)} now`;
  if (ahead === 0) return `${clock}, the same as this device.`;
  const [hours, minutes] = [Math.floor(Math.abs(ahead) / 60), Math.abs(ahead) % 60];
  const size = [hours > 0 ? `${hours} h` : '', minutes > 0 ? `${minutes} min` : ''].filter(
    (part) => part !== '',
  );
  return `${clock}, ${size.join(' ')} ${ahead > 0 ? 'ahead of' : 'behind'} this device.`;
}
