import { describe, expect, it } from 'vitest';
import { knownZones } from '@/components/event/zones';
import { instant } from '@/lib/time/instant';
import { matchingZones } from '@/lib/time/zone-search';
import { trackTimeSentence } from '@/lib/words/track-time';

describe('the zones to choose from', () => {
  const zones = knownZones();

  it('are found by city, by continent and without underscores', () => {
    expect(matchingZones('chicago', zones)[0]).toBe('America/Chicago');
    expect(matchingZones('new york', zones)[0]).toBe('America/New_York');
    expect(matchingZones('europe os', zones)).toContain('Europe/Oslo');
    expect(matchingZones('nowhere land', zones)).toEqual([]);
    expect(matchingZones('UTC', zones)).toContain('UTC');
  });

  it('put cities that start with what was typed first', () => {
    const den = matchingZones('den', zones);
    expect(den.indexOf('America/Denver')).toBeLessThan(den.indexOf('Asia/Aden'));
  });
});

describe('track time', () => {
  // In January Chicago is at UTC-6, Berlin at UTC+1 and Kolkata at UTC+5:30.
  const now = instant(Date.parse('2027-01-16T18:00:00Z'));

  it('is told against the device', () => {
    expect(trackTimeSentence('America/Chicago', 'Europe/Berlin', now)).toBe(
      'Track time is 12:00 now, 7 h behind this device.',
    );
    expect(trackTimeSentence('Asia/Kolkata', 'Europe/Berlin', now)).toBe(
      'Track time is 23:30 now, 4 h 30 min ahead of this device.',
    );
    expect(trackTimeSentence('Europe/Berlin', 'Europe/Berlin', now)).toBe(
      'Track time is 19:00 now, the same as this device.',
    );
    expect(trackTimeSentence('Mars/Olympus', 'Europe/Berlin', now)).toBeNull();
  });
});
