import { describe, expect, it } from 'vitest';
import { hoursPressureDoubt } from '@/lib/contract/pressure-doubts';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import { provenanceOf } from '@/lib/hours/provenance';
import type { Hour } from '@/lib/hours/series';
import { expectOk } from '@/lib/result/result';
import { downloadedCalendar } from '@/lib/share/downloaded-calendar';
import { makeSharedNight } from '@/lib/share/make-shared-night';
import { sharedSeries } from '@/lib/share/night-requests';
import { METRIC_UNITS } from '@/lib/units/choice';
import { hectopascalToPascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { provenanceText } from '@/lib/words/provenance';
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

const VOICE = { zone: 'America/Chicago', units: METRIC_UNITS };
/** RFC 5545, section 3.1: a long line goes on after CR LF and a space. */
const unfolded = (text: string) => text.replaceAll(/\r\n[ \t]/g, '');

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

  it('that is only an estimate travels as one, and is told as one in the calendar', () => {
    const hours = shared(966, { origin: 'forecast', pressureFrom: 'standard' });
    for (const hour of hours) expect(hour).not.toHaveProperty('pressureHpa');
    const night = sharedEvening({ hours });
    expect(expectOk(sharedSeries(night)).hours.every(({ pressureFrom }) => pressureFrom === 'standard')).toBe(
      true,
    );
    expect(unfolded(downloadedCalendar(night, VOICE))).toContain(
      'Pressure an estimate (standard atmosphere).',
    );
    expect(unfolded(downloadedCalendar(sharedEvening(), VOICE))).not.toContain('estimate');
  });

  it('of a forecast is not called typed where it arrives', () => {
    const { hours, source } = expectOk(sharedSeries(sharedEvening()));
    expect(provenanceText(provenanceOf(hours[0]!, source))).toBe('forecast, the link');
    const typed = expectOk(sharedSeries(sharedEvening({ hoursTyped: true })));
    expect(provenanceText(provenanceOf(typed.hours[0]!, typed.source))).toBe('typed');
  });

  it('in plain weather takes nothing along, so that links stay short', () => {
    expect(shared(980, { origin: 'forecast' })[0]).not.toHaveProperty('pressureConfirmed');
  });
});
