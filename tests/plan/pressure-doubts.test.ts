import { describe, expect, it } from 'vitest';
import type { PressureGiven } from '@/lib/air/air';
import type { BaselinePressure } from '@/lib/carb/machine';
import type { Hour, HourSeries } from '@/lib/hours/series';
import { pressureDoubts, readingDoubt } from '@/lib/plan/pressure-doubts';
import { correctHours } from '@/lib/plan/readings';
import type { Reading } from '@/lib/plan/types';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre, pascal } from '@/lib/units/quantity';
import { airOf, relative, seaLevel, standard, station } from '../support/air';
import { COLD_NIGHT, clock, DUSK } from '../support/plan-cases';
import { raceMachine } from '../support/race-machine';

const HEIGHT = 200;
const HUMID = relative(0.7);

function hours(pressure: PressureGiven, more: Partial<Hour> = {}, height = HEIGHT): HourSeries {
  const { temperature, pressure: at, pressureFrom, relativeHumidity } = airOf(-10, pressure, HUMID);
  const air = { temperature, pressure: at, pressureFrom, relativeHumidity };
  return {
    ...COLD_NIGHT,
    elevation: metre(height),
    hours: COLD_NIGHT.hours.map((hour): Hour => ({ ...hour, ...air, origin: 'typed', ...more })),
  };
}

function machine(pressure: PressureGiven, baselinePressure: Partial<BaselinePressure> = {}) {
  const told = { elevation: metre(HEIGHT), confirmed: false, ...baselinePressure };
  return raceMachine({ baselineAir: airOf(-8, pressure, HUMID), baselinePressure: told });
}

const codes = (...given: Parameters<typeof pressureDoubts>) =>
  pressureDoubts(...given).map(({ code }) => code);

describe('The pressures of a baseline and of hours', () => {
  it('are each asked about by themselves', () => {
    expect(codes(machine(station(1022, HEIGHT)), hours(station(1020, HEIGHT)))).toEqual([
      'hours-pressure-in-doubt',
      'baseline-pressure-in-doubt',
    ]);
  });

  it('of two kinds give themselves away beside each other: the one too high as station pressure', () => {
    expect(codes(machine(station(1012, HEIGHT)), hours(station(988, HEIGHT)))).toEqual([
      'baseline-pressure-in-doubt',
    ]);
    expect(codes(machine(station(988, HEIGHT)), hours(station(1012, HEIGHT)))).toEqual([
      'hours-pressure-in-doubt',
    ]);
  });

  it('of a service are not in doubt, but a baseline beside them is', () => {
    const forecast = { origin: 'forecast' } as const;
    expect(codes(machine(station(988, HEIGHT)), hours(station(1012, HEIGHT), forecast))).toEqual([]);
    expect(codes(machine(station(1012, HEIGHT)), hours(station(988, HEIGHT), forecast))).toEqual([
      'baseline-pressure-in-doubt',
    ]);
  });

  it('that a person stands by are not asked about, and still speak against others', () => {
    const stood = { pressureConfirmed: true };
    expect(codes(machine(station(988, HEIGHT)), hours(station(1012, HEIGHT), stood))).toEqual([]);
    expect(codes(machine(station(1012, HEIGHT), { confirmed: true }), hours(station(988, HEIGHT)))).toEqual(
      [],
    );
    expect(codes(machine(station(988, HEIGHT), { confirmed: true }), hours(station(1012, HEIGHT)))).toEqual([
      'hours-pressure-in-doubt',
    ]);
  });

  it('are held against no estimate', () => {
    expect(codes(machine(station(1012, HEIGHT)), hours(standard(HEIGHT)))).toEqual([]);
    expect(codes(machine(standard(HEIGHT)), hours(station(1012, HEIGHT)))).toEqual([]);
  });

  it('as sea-level numbers called so are no question', () => {
    expect(codes(machine(seaLevel(1012, HEIGHT)), hours(station(988, HEIGHT)))).toEqual([]);
  });

  it('without an elevation of the baseline are compared as they are', () => {
    const nowhere = { elevation: null };
    expect(codes(machine(station(1013), nowhere), hours(station(985, HEIGHT)))).toEqual([
      'baseline-pressure-without-elevation',
    ]);
    expect(codes(machine(station(1000), nowhere), hours(station(985, HEIGHT)))).toEqual([]);
    expect(
      codes(machine(station(1013), { ...nowhere, confirmed: true }), hours(station(985, HEIGHT))),
    ).toEqual([]);
  });

  it('of which nothing but the air is known are left alone', () => {
    expect(codes(raceMachine(), hours(station(988, HEIGHT)))).toEqual([]);
  });
});

describe('A barometer at the track', () => {
  const at300 = hours(station(978, 300), { origin: 'forecast' }, 300);
  const read = (hpa: number, more: Partial<Reading> = {}): Reading => ({
    id: 'r1',
    at: clock(19),
    temperature: celsiusToKelvin(-10),
    stationPressure: hectopascalToPascal(hpa),
    relativeHumidity: null,
    ...more,
  });
  const corrected = (reading: Reading, series = at300) =>
    correctHours({ series, readings: [reading], now: DUSK });

  it('higher than the hours by just the reduction is asked about, and not heard meanwhile', () => {
    // 978 hPa at 300 m and -10 °C is 1016.5 hPa at sea level (WMO-No. 8, vol. I, eq. 3.2).
    const { warnings, pressureRead } = corrected(read(1016.5));
    expect(warnings).toMatchObject([
      { code: 'reading-pressure-in-doubt', readingId: 'r1', doubt: { likely: 'sea-level' } },
    ]);
    expect(pressureRead).toBe(false);
  });

  it('is heard once it is confirmed', () => {
    expect(corrected(read(1016.5, { confirmed: true }))).toMatchObject({ warnings: [], pressureRead: true });
  });

  it('lower by just the reduction is asked about: reduced twice, or hours of the other kind', () => {
    expect(corrected(read(941)).warnings).toMatchObject([
      { code: 'reading-pressure-in-doubt', doubt: { likely: null } },
    ]);
  });

  it('a few hPa off is heard', () => {
    for (const hpa of [971, 975, 978, 981, 985]) expect(corrected(read(hpa)).warnings).toEqual([]);
  });

  it('beside an estimate is judged by itself', () => {
    const estimated = hours(standard(300), {}, 300);
    expect(readingDoubt(read(1015), estimated, 3700)).toMatchObject({ likely: 'sea-level', against: null });
    expect(readingDoubt(read(995), estimated, pascal(1700))).toBeNull();
  });
});
