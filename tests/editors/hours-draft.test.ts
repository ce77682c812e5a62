import { describe, expect, it } from 'vitest';
import { runsFromEvent } from '@/lib/contract/event-from-json';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { rowValues, uncoveredRuns } from '@/lib/fields/hours/between';
import { blankHoursDraft, draftFromHours, hoursOfEvent } from '@/lib/fields/hours/draft-from-hours';
import { type HoursDraft, withMoments } from '@/lib/fields/hours/hours-draft';
import { readHours } from '@/lib/fields/hours/read-hours';
import { takePasted } from '@/lib/fields/hours/take-pasted';
import { readPastedHours } from '@/lib/hours/paste';
import { expectOk } from '@/lib/result/result';
import { typedHoursSchema } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';
import { localClock } from '@/lib/time/zone';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';

const ZONE = 'America/Chicago';
const NOW = instant(Date.parse('2027-01-16T12:00:00Z'));
const EVENT = {
  timezone: ZONE,
  elevationM: 402,
  runs: [
    { name: 'Round 1', start: '2027-01-16T19:00:00-06:00', end: '2027-01-16T19:06:00-06:00', weight: 1 },
    { name: 'Round 2', start: '2027-01-16T22:10:00-06:00', end: '2027-01-16T22:16:00-06:00', weight: 1 },
  ],
};

const clock = (iso: string): string => localClock(instant(Date.parse(iso)), ZONE);

/** The night's draft with temperatures typed at some clock times. */
function typed(
  temperatures: Readonly<Record<string, string>>,
  change: Partial<HoursDraft> = {},
  units = METRIC_UNITS,
): HoursDraft {
  const blank = blankHoursDraft({ event: EVENT, units, now: NOW });
  return {
    ...blank,
    rows: blank.rows.map((row) => ({ ...row, temperature: temperatures[clock(row.at)] ?? '' })),
    ...change,
  };
}

describe('hours being typed', () => {
  it('stand from before the first run to two hours after the last', () => {
    expect(hoursOfEvent(EVENT, NOW).map(clock)).toEqual([
      '18:00',
      '19:00',
      '20:00',
      '21:00',
      '22:00',
      '23:00',
      '00:00',
      '01:00',
    ]);
  });

  it('stand on from now where there are no runs yet', () => {
    const hours = hoursOfEvent({ ...EVENT, runs: [] }, NOW);
    expect(hours).toHaveLength(13);
    expect(hours[0]).toBe('2027-01-16T12:00:00Z');
  });

  it('show one clock time twice in the night of 25 hours and none of 2:00 in that of 23', () => {
    const night = (start: string, end: string) =>
      hoursOfEvent({ ...EVENT, runs: [{ name: 'Leg', start, end, weight: 1 }] }, NOW).map(clock);
    expect(night('2027-11-07T00:30:00-05:00', '2027-11-07T02:30:00-06:00')).toEqual([
      '00:00',
      '01:00',
      '01:00',
      '02:00',
      '03:00',
      '04:00',
      '05:00',
    ]);
    expect(night('2027-03-14T00:30:00-06:00', '2027-03-14T03:30:00-05:00')).toEqual([
      '00:00',
      '01:00',
      '03:00',
      '04:00',
      '05:00',
      '06:00',
    ]);
  });

  it('need two temperatures and nothing else', () => {
    const { value, errors } = readHours(typed({ '18:00': '-4', '23:00': '−12,5 °C' }), { zone: ZONE });
    expect(errors).toEqual({});
    expect(value).toEqual({
      elevationM: 402,
      typed: {
        hours: [
          { time: '2027-01-16T18:00:00-06:00', temperatureC: -4 },
          { time: '2027-01-16T23:00:00-06:00', temperatureC: -12.5 },
        ],
        pressure: { kind: 'standard' },
        relativeHumidity: 0.8,
      },
    });
    expect(readHours(typed({ '18:00': '-4' }), { zone: ZONE }).errors).toHaveProperty('rows');
  });

  it('fill the hours between with a curve that keeps a typed low the low', () => {
    const draft = typed({ '18:00': '-4', '20:00': '-10', '22:00': '-10', '23:00': '-8' });
    const values = rowValues(draft.rows, draft.units);
    expect(values.map(({ kind }) => kind)).toEqual([
      'typed',
      'between',
      'typed',
      'between',
      'typed',
      'typed',
      'none',
      'none',
    ]);
    const [, at19, , at21] = values;
    if (at19?.kind !== 'between' || at21?.kind !== 'between') throw new Error('not filled in');
    expect(at19.temperature - 273.15).toBeGreaterThan(-10);
    expect(at19.temperature - 273.15).toBeLessThan(-4);
    expect(at21.temperature - 273.15).toBeCloseTo(-10, 9);
  });

  it('show the same values between as the plan will use', () => {
    const draft = typed({ '18:00': '-4', '21:00': '-11', '23:00': '-9.5' });
    const { value } = readHours(draft, { zone: ZONE });
    if (value === null) throw new Error('not read');
    const { series } = expectOk(typedSeriesFromJson(value.typed, value.elevationM));
    const shown = rowValues(draft.rows, draft.units);
    expect(series.hours).toHaveLength(6);
    series.hours.forEach((hour, i) => {
      const row = shown[i];
      if (row === undefined || !('temperature' in row)) throw new Error('no value shown');
      expect(row.kind).toBe(hour.origin);
      // The form draws its own curve, through the same points; only rounding to JSON lies between.
      expect(row.temperature).toBeCloseTo(hour.temperature, 6);
    });
  });

  it('invent nothing before the first and after the last typed hour', () => {
    const draft = typed({ '19:00': '-4', '21:00': '-8' });
    expect(rowValues(draft.rows, draft.units).map(({ kind }) => kind)).toEqual([
      'none',
      'typed',
      'between',
      'typed',
      'none',
      'none',
      'none',
      'none',
    ]);
    const runs = runsFromEvent(EVENT);
    expect(uncoveredRuns(draft.rows, runs, draft.units).map(({ name }) => name)).toEqual(['Round 2']);
    expect(uncoveredRuns(typed({ '19:00': '1', '23:00': '0' }).rows, runs, draft.units)).toEqual([]);
  });

  it('say which hour cannot be read, and keep its text out of the curve', () => {
    const draft = typed({ '18:00': '-4', '19:00': 'cold', '23:00': '1e309' });
    expect(Object.keys(readHours(draft, { zone: ZONE }).errors)).toEqual([
      'rows.1.temperature',
      'rows.5.temperature',
    ]);
    expect(rowValues(draft.rows, draft.units)[1]).toEqual({ kind: 'unreadable' });
  });

  it('catch a sea-level number typed as the station pressure of a high place', () => {
    const draft = typed(
      { '18:00': '10', '23:00': '5' },
      { elevation: '1600', pressureKind: 'station', pressure: '1015' },
    );
    const { value, errors } = readHours(draft, { zone: ZONE });
    expect(value).toBeNull();
    expect(Object.keys(errors)).toEqual(['pressure']);
    expect(errors.pressure).toContain('cannot be the station pressure at 1,600');
    expect(readHours({ ...draft, pressureKind: 'sea-level' }, { zone: ZONE }).errors).toEqual({});
  });

  it('put a wrong pressure of one hour beside that hour', () => {
    const draft = typed(
      { '18:00': '10', '23:00': '5' },
      { elevation: '1600', pressureKind: 'station', pressure: '836', pressureByHour: true },
    );
    const rows = draft.rows.map((row, i) => (i === 5 ? { ...row, pressure: '1015' } : row));
    expect(Object.keys(readHours({ ...draft, rows }, { zone: ZONE }).errors)).toEqual(['rows.5.pressure']);
  });

  it('ask for the temperature of an hour that has only a humidity', () => {
    const draft = typed({ '18:00': '10', '23:00': '5' }, { humidityByHour: true });
    const rows = draft.rows.map((row, i) => (i === 2 ? { ...row, humidity: '70' } : row));
    expect(Object.keys(readHours({ ...draft, rows }, { zone: ZONE }).errors)).toEqual(['rows.2.temperature']);
    const wrong = draft.rows.map((row, i) => (i === 0 ? { ...row, humidity: '700' } : row));
    expect(readHours({ ...draft, rows: wrong }, { zone: ZONE }).errors['rows.0.humidity']).toContain(
      'between 0 and 100',
    );
  });
});

describe('typed hours opened again', () => {
  it('read back as the same hours, in either kind of units', () => {
    const original = typedHoursSchema.parse({
      hours: [
        {
          time: '2027-01-16T18:00:00-06:00',
          temperatureC: -4.5,
          relativeHumidity: 0.71,
          altimeterHpa: 1009.3,
        },
        { time: '2027-01-16T20:40:00-06:00', temperatureC: -9.1, relativeHumidity: 0.84 },
        { time: '2027-01-16T23:00:00-06:00', temperatureC: -12.7 },
      ],
      pressure: { kind: 'altimeter', hpa: 1011.4 },
      relativeHumidity: 0.77,
    });
    for (const units of [US_UNITS, METRIC_UNITS]) {
      const draft = draftFromHours(original, { event: EVENT, units, now: NOW });
      expect(draft.rows.map((row) => clock(row.at))).toEqual([
        '18:00',
        '19:00',
        '20:00',
        '20:40',
        '21:00',
        '22:00',
        '23:00',
        '00:00',
        '01:00',
      ]);
      const { value, errors } = readHours(draft, { zone: ZONE });
      expect(errors).toEqual({});
      value?.typed.hours.forEach((hour, i) => {
        const was = original.hours[i];
        expect(hour.time).toBe(was?.time);
        expect(hour.temperatureC).toBeCloseTo(was?.temperatureC ?? Number.NaN, 3);
        expect(hour.relativeHumidity).toBe(was?.relativeHumidity);
        // Four decimals of an inch of mercury are 0.003 hPa.
        if (was?.altimeterHpa === undefined) expect(hour.altimeterHpa).toBeUndefined();
        else expect(hour.altimeterHpa).toBeCloseTo(was.altimeterHpa, 2);
      });
      expect(value?.typed.relativeHumidity).toBe(0.77);
      expect(value?.typed.pressure).toEqual({ kind: 'altimeter', hpa: expect.closeTo(1011.4, 2) });
    }
  });

  it('show a dew point as the humidity it is', () => {
    const draft = draftFromHours(
      typedHoursSchema.parse({
        hours: [{ time: '2027-01-16T18:00:00-06:00', temperatureC: 20, dewPointC: 10 }],
        pressure: { kind: 'standard' },
      }),
      { event: EVENT, units: METRIC_UNITS, now: NOW },
    );
    // Saturation pressure 12.27 hPa at 10 °C over 23.37 hPa at 20 °C (Murphy and Koop 2005, eq. 10): 52.5 %.
    expect(draft.rows[0]?.humidity).toBe('52.5');
  });

  it('tell pressures of several kinds as station pressures, so that none changes its meaning', () => {
    const draft = draftFromHours(
      typedHoursSchema.parse({
        hours: [
          { time: '2027-01-16T18:00:00-06:00', temperatureC: 0, pressureHpa: 966 },
          { time: '2027-01-16T23:00:00-06:00', temperatureC: 0, altimeterHpa: 1013.25 },
        ],
        pressure: { kind: 'standard' },
      }),
      { event: EVENT, units: METRIC_UNITS, now: NOW },
    );
    expect(draft.pressureKind).toBe('station');
    expect(draft.rows[0]?.pressure).toBe('966');
    // ISO 2533: 1013.25 hPa (1 - 0.0065 402 / 288.15)^5.25588 = 965.88 hPa, worked by hand.
    const last = draft.rows.findLast(({ temperature }) => temperature !== '');
    expect(Number(last?.pressure)).toBeCloseTo(965.88, 2);
  });
});

describe('a pasted column', () => {
  const options = {
    date: '2027-01-16',
    zone: ZONE,
    temperatureUnit: 'C',
    pressureUnit: 'hPa',
    startClock: '18:00',
  } as const;

  it('of 24 hours stands in the form in one act', () => {
    const column = Array.from({ length: 24 }, (_, i) => `${-i / 2}`.replace('.', ',')).join('\n');
    const pasted = expectOk(readPastedHours(column, options));
    const draft = takePasted(typed({}), pasted, null);
    const filled = draft.rows.filter((row) => row.temperature !== '');
    expect(filled).toHaveLength(24);
    expect(clock(filled[0]?.at ?? '')).toBe('18:00');
    expect(filled[23]?.temperature).toBe('-11.5');
    expect(readHours(draft, { zone: ZONE }).value?.typed.hours).toHaveLength(24);
  });

  it('replaces what stood at its hours and leaves the rest', () => {
    const pasted = expectOk(readPastedHours('-1\n-2', options));
    const draft = takePasted(typed({ '18:00': '9', '22:00': '7' }), pasted, null);
    expect(draft.rows.map((row) => [clock(row.at), row.temperature]).slice(0, 5)).toEqual([
      ['18:00', '-1'],
      ['19:00', '-2'],
      ['20:00', ''],
      ['21:00', ''],
      ['22:00', '7'],
    ]);
  });

  it('brings its humidity and, once its kind is known, its pressure', () => {
    const table = 'time;temp °C;humidity %;pressure hPa\n18:00;-1;70;968\n19:00;-2;75;969';
    const pasted = expectOk(readPastedHours(table, options));
    const withKind = takePasted(typed({}), pasted, 'station');
    expect(withKind.rows[0]).toMatchObject({ temperature: '-1', humidity: '70', pressure: '968' });
    expect(readHours(withKind, { zone: ZONE }).value?.typed.hours[1]).toMatchObject({
      relativeHumidity: 0.75,
      pressureHpa: 969,
    });
    const without = takePasted(typed({}), pasted, null);
    expect(without.rows[0]?.pressure).toBe('');
    expect(without.pressureByHour).toBe(false);
  });
});

describe('rows of hours', () => {
  it('stay in order of time with no moment twice', () => {
    const rows = withMoments(
      [{ at: '2027-01-16T20:00:00Z', temperature: '5', humidity: '', pressure: '' }],
      ['2027-01-16T21:00:00Z', '2027-01-16T20:00:00Z', '2027-01-16T19:30:00Z'],
    );
    expect(rows.map(({ at, temperature }) => [at, temperature])).toEqual([
      ['2027-01-16T19:30:00Z', ''],
      ['2027-01-16T20:00:00Z', '5'],
      ['2027-01-16T21:00:00Z', ''],
    ]);
  });
});
