import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock, offsetMinutes, zoneExists, zoneName } from '@/lib/time/zone';

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
