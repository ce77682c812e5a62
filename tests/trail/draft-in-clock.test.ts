import { describe, expect, it } from 'vitest';
import { draftInClock } from '@/lib/fields/trail/draft-in-clock';
import { firstDraft } from '@/lib/fields/trail/first-draft';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import { US_UNITS } from '@/lib/units/choice';

const first = firstDraft({ units: US_UNITS, timezone: 'America/Denver', date: '2027-01-16' });
const clocks = ({ ride }: TrailDraft): readonly string[] =>
  [ride.startClock, ...[...ride.places, ...ride.hours].map(({ clock }) => clock)].map((text) =>
    text.replaceAll('\u00a0', ' '),
  );

describe('the times of the trail page', () => {
  it('stand on the clock of whoever reads them, and come back', () => {
    const twelve = draftInClock(first, '12');
    expect(clocks(twelve)).toEqual([
      '',
      '8:00 am',
      '10:30 am',
      '12:30 pm',
      '3:00 pm',
      '5:00 pm',
      '7:00 am',
      '1:00 pm',
      '6:00 pm',
    ]);
    expect(draftInClock(twelve, '24')).toEqual(first);
  });

  it('stay as they were typed where that is the person’s own way to write them, or no time at all', () => {
    const [place] = first.ride.places;
    const typed = ['8', '800', '8 AM', '24:30', 'noon', ''];
    const own = {
      ...first,
      ride: { ...first.ride, places: typed.map((clock) => ({ ...place!, clock })) },
    };
    for (const hours of ['12', '24'] as const)
      expect(draftInClock(own, hours).ride.places.map(({ clock }) => clock)).toEqual(typed);
  });
});
