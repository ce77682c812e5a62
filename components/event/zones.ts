import { zoneExists } from '@/lib/time/zone';

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
