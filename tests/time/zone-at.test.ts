import { describe, expect, it } from 'vitest';
import { instant } from '@/lib/time/instant';
import { offsetMinutes, zoneExists } from '@/lib/time/zone';
import { zoneAt } from '@/lib/time/zone-at';

describe('the zone of a point', () => {
  // Zone names and the places they are for: IANA time zone database, zone1970.tab; coordinates from memory. A neighbour's
  // name is as good where it keeps the same clocks.
  it.each([
    ['Queenstown', -45.03, 168.66, 'Pacific/Auckland'],
    ['Duluth', 46.79, -92.1, 'America/Chicago'],
    ['Jackson, Wyoming', 43.48, -110.76, 'America/Denver'],
    ['Whistler', 50.12, -122.95, 'America/Vancouver'],
    ['Tromsø', 69.65, 18.96, 'Europe/Oslo'],
    ['Ushuaia', -54.8, -68.3, 'America/Argentina/Ushuaia'],
    ['Sapporo', 43.06, 141.35, 'Asia/Tokyo'],
  ])('shows the clocks of %s, summer and winter', (_, latitude, longitude, zone) => {
    const found = zoneAt({ latitude, longitude })!;
    for (const month of [0, 3, 6, 9]) {
      const at = instant(Date.UTC(2027, month, 15));
      expect(offsetMinutes(at, found)).toBe(offsetMinutes(at, zone));
    }
  });

  it('is one that this machine knows, or none, wherever on earth', () => {
    for (let latitude = -90; latitude <= 90; latitude += 5)
      for (let longitude = -180; longitude <= 180; longitude += 5) {
        const zone = zoneAt({ latitude, longitude });
        expect(zone === null || zoneExists(zone)).toBe(true);
      }
  });
});
