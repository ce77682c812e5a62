import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { readInstant } from '@/lib/time/zone';
import { placeZoneNote } from '@/lib/words/place-zone';

const at = (iso: string) => expectOk(readInstant(iso));

describe('A place on another clock than the event', () => {
  it('is told with both clocks and what to do', () => {
    // IANA time zone database: Mountain Time is UTC-7 and Central Time UTC-6 in January.
    expect(
      placeZoneNote({
        place: 'Pinewater',
        placeZone: 'America/Denver',
        eventZone: 'America/Chicago',
        at: at('2027-01-16T19:00:00-06:00'),
      }),
    ).toBe(
      'Pinewater keeps another time than the event: 18:00 there (America/Denver) is 19:00 on the event’s clock (America/Chicago). If you race there, change the event’s time zone and look at the runs again.',
    );
  });

  it('is told only while the clocks differ: Arizona keeps Denver time in winter and Los Angeles time in summer', () => {
    const note = (iso: string) =>
      placeZoneNote({
        place: 'Pinewater',
        placeZone: 'America/Phoenix',
        eventZone: 'America/Denver',
        at: at(iso),
      });
    expect(note('2027-01-16T19:00:00-07:00')).toBeNull();
    expect(note('2027-07-16T19:00:00-06:00')).toContain('18:00 there');
  });

  it('is not told of a zone that nobody knows', () => {
    const shared = { place: 'Pinewater', eventZone: 'America/Denver', at: at('2027-01-16T19:00:00-07:00') };
    expect(placeZoneNote({ ...shared, placeZone: 'Nowhere/Atall' })).toBeNull();
  });
});
