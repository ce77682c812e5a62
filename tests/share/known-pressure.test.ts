import { describe, expect, it } from 'vitest';
import { hoursPressureDoubt } from '@/lib/contract/pressure-doubts';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import type { Hour } from '@/lib/hours/series';
import { makeSharedNight } from '@/lib/share/make-shared-night';
import { hectopascalToPascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { COLD_NIGHT } from '../support/plan-cases';
import { sharedEvening } from '../support/shared-evening';

const HEIGHT = 300;

/** The hours of a shared night, all with one pressure [hPa] at 300 m. */
function shared(hpa: number, more: Partial<Hour>) {
  const { event } = sharedEvening();
  const first = Date.parse(event.runs[0]!.start) - COLD_NIGHT.hours[0]!.at;
  const hours = COLD_NIGHT.hours.map(
    (hour): Hour => ({
      ...hour,
      at: (hour.at + first) as Hour['at'],
      pressure: hectopascalToPascal(hpa),
      pressureFrom: 'station',
      ...more,
    }),
  );
  const series = { ...COLD_NIGHT, elevation: metre(HEIGHT), hours };
  const sharedAt = hours[0]!.at;
  return makeSharedNight({ event, machines: [], series, hoursTyped: false, readings: [], sharedAt }).hours;
}

const doubtOn = (hours: ReturnType<typeof shared>) =>
  hoursPressureDoubt({ hours, pressure: { kind: 'standard' }, relativeHumidity: 0.8 }, HEIGHT);

describe('an unusual pressure that travels with a night', () => {
  it('of a service, or one that was stood by, is not asked about where it arrives', () => {
    for (const known of [{ origin: 'forecast' }, { origin: 'typed', pressureConfirmed: true }] as const) {
      const hours = shared(1012, known);
      expect(hours.length).toBeGreaterThan(1);
      expect(doubtOn(hours)).toBeNull();
      const series = seriesFromJson(hours, HEIGHT);
      expect(series.ok && series.value.hours.every((hour) => hour.pressureConfirmed === true)).toBe(true);
    }
  });

  it('that nobody has answered for is asked about there as here', () => {
    expect(doubtOn(shared(1012, { origin: 'typed' }))).toMatchObject({ likely: 'sea-level' });
  });

  it('in plain weather takes nothing along, so that links stay short', () => {
    expect(shared(980, { origin: 'forecast' })[0]).not.toHaveProperty('pressureConfirmed');
  });
});
