import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirProblem } from '@/lib/air/air';
import { airAt, airFrom } from '@/lib/air/air-from';
import { celsiusToKelvin, hectopascalToPascal, kelvinToCelsius } from '@/lib/units/convert';
import {
  type Kelvin,
  kelvin,
  type Metre,
  type Pascal,
  pascal,
  type Ratio,
  ratio,
} from '@/lib/units/quantity';
import {
  airOf,
  altimeter,
  dewPoint,
  expectWithin,
  frostPoint,
  givenAir,
  relative,
  seaLevel,
  standard,
  station,
} from '../support/air';

const problemOf = (...given: Parameters<typeof givenAir>): AirProblem | null => {
  const air = airFrom(givenAir(...given));
  return air.ok ? null : air.reason;
};

describe('air', () => {
  it('keeps what it was given and says where the pressure came from', () => {
    const air = airOf(-20, station(990), relative(0.8));
    expect(kelvinToCelsius(air.temperature)).toBeCloseTo(-20, 10);
    expect(air.pressure).toBe(99_000);
    expect(air.relativeHumidity).toBe(0.8);
    expect(air.pressureFrom).toBe('station');
    expect(airOf(-20, standard(1000), relative(0.8)).pressureFrom).toBe('standard');
    expect(airOf(-20, altimeter(1013, 1000), relative(0.8)).pressureFrom).toBe('altimeter');
    expect(airOf(-20, seaLevel(1013, 1000), relative(0.8)).pressureFrom).toBe('sea-level');
  });

  it('describes itself without contradiction', () => {
    const air = airOf(-20, station(990), relative(0.8));
    expectWithin(air.relativeDensity, air.density / 1.225, 1e-12);
    expect(air.dryDensity).toBeLessThan(air.density);
    // The enhancement factor is 0.4 % at this pressure (CIPM-2007, eq. A1.2: 1.00062 + 3.14e-8 × 99000 + 2.2e-4).
    expectWithin((air.vapourMoleFraction * air.pressure) / air.vapourPressure, 1.003953, 1e-6);
  });

  it('of standard pressure at sea level has 1013.25 hPa', () => {
    expect(airOf(15, standard(0), relative(0)).pressure).toBe(101_325);
  });

  it('with no water has neither dew point nor frost point', () => {
    const air = airOf(-20, station(990), relative(0));
    expect(air.dewPoint).toBeNull();
    expect(air.frostPoint).toBeNull();
    expect(air.vapourPressure).toBe(0);
  });

  it('at 0 °C and 0 % and 0 m is air like any other: zero is a number', () => {
    const air = airOf(0, standard(0), relative(0));
    expectWithin(air.density, 1.2930487, 2e-6);
  });

  it('too warm for frost has a dew point only', () => {
    const air = airOf(20, station(1000), relative(0.5));
    // 9.3 °C by the tables of any weather service; Magnus of WMO-No. 8 gives 9.26.
    expect(kelvinToCelsius(air.dewPoint!)).toBeCloseTo(9.26, 1);
    expect(air.frostPoint).toBeNull();
  });
});

describe('humidity given in three ways', () => {
  it('is the same air when each is turned into the others', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -65, max: 55, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (t, h) => {
          const air = airOf(t, station(900), relative(h));
          const byDew = airFrom({
            temperature: air.temperature,
            pressure: { kind: 'station', value: air.pressure },
            humidity: { kind: 'dew-point', value: air.dewPoint! },
          });
          expect(byDew.ok).toBe(true);
          if (byDew.ok) expectWithin(byDew.value.relativeHumidity, h, 1e-9);
          if (air.frostPoint === null) return;
          const byFrost = airFrom({
            temperature: air.temperature,
            pressure: { kind: 'station', value: air.pressure },
            humidity: { kind: 'frost-point', value: air.frostPoint },
          });
          if (byFrost.ok) expectWithin(byFrost.value.relativeHumidity, h, 1e-9);
          // Only a frost point colder than the range, or warmer than the triple point, is refused.
          else expect(byFrost.reason.code).toBe('humidity-out-of-range');
        },
      ),
      { numRuns: 500, seed: 41 },
    );
  });

  it('a dew point at the temperature is saturated air, a frost point there is not', () => {
    expect(airOf(-10, station(1000), dewPoint(-10)).relativeHumidity).toBeCloseTo(1, 12);
    // Murphy & Koop (2005): ice over water at -10 °C is 1/1.1022.
    expect(airOf(-10, station(1000), frostPoint(-10)).relativeHumidity).toBeCloseTo(1 / 1.1022, 4);
  });

  it('a frost point above the temperature is possible: saturated air at -10 °C has one of -8.9 °C', () => {
    const air = airOf(-10, station(1000), relative(1));
    expect(kelvinToCelsius(air.frostPoint!)).toBeCloseTo(-8.9, 1);
    expect(problemOf(-10, station(1000), frostPoint(-8.95))).toBeNull();
    expect(problemOf(-10, station(1000), frostPoint(-8.5))?.code).toBe('dew-point-above-temperature');
  });

  it('a dew point a tenth above the temperature is rounding and counts as saturated', () => {
    expect(airOf(-10, station(1000), dewPoint(-9.95)).relativeHumidity).toBe(1);
    expect(problemOf(-10, station(1000), dewPoint(-9.85))).toEqual({
      code: 'dew-point-above-temperature',
      dewPoint: expect.closeTo(263.3, 8),
      temperature: celsiusToKelvin(-10),
    });
  });
});

describe('numbers that are not air', () => {
  it.each([
    [-70.1, 'temperature-out-of-range'],
    [60.1, 'temperature-out-of-range'],
    [-70, null],
    [60, null],
  ])('a temperature of %d °C: %s', (t, code) => {
    expect(problemOf(t, station(1000), relative(0.5))?.code ?? null).toBe(code);
  });

  it.each([
    [449, 'pressure-out-of-range'],
    [1101, 'pressure-out-of-range'],
    [450, null],
    [1100, null],
  ])('a station pressure of %d hPa at no known place: %s', (hpa, code) => {
    expect(problemOf(-10, station(hpa), relative(0.5))?.code ?? null).toBe(code);
  });

  it.each([
    [-431, 'elevation-out-of-range'],
    [6001, 'elevation-out-of-range'],
    [-430, null],
    [6000, null],
  ])('an elevation of %d m: %s', (m, code) => {
    expect(problemOf(-10, standard(m), relative(0.5))?.code ?? null).toBe(code);
    expect(problemOf(-10, altimeter(1013, m), relative(0.5))?.code ?? null).toBe(code);
  });

  it.each([
    [relative(-0.01), 'humidity-out-of-range'],
    [relative(1.01), 'humidity-out-of-range'],
    [relative(80), 'humidity-out-of-range'],
    [dewPoint(-101), 'humidity-out-of-range'],
    [frostPoint(0.02), 'humidity-out-of-range'],
    [frostPoint(0), 'dew-point-above-temperature'],
    [dewPoint(-9), 'dew-point-above-temperature'],
    [dewPoint(-60), null],
  ])('a humidity of %j at -10 °C: %s', (humidity, code) => {
    expect(problemOf(-10, station(1000), humidity)?.code ?? null).toBe(code);
  });

  it('says which kind of pressure was wrong', () => {
    expect(problemOf(-10, seaLevel(500, 100), relative(0.5))).toEqual({
      code: 'pressure-out-of-range',
      pressure: 50_000,
      kind: 'sea-level',
    });
  });

  it('refuses what is no number, should it get past the types', () => {
    const given = {
      temperature: Number.NaN as Kelvin,
      pressure: { kind: 'station', value: pascal(100_000) },
      humidity: relative(0.5),
    } as const;
    expect(airFrom(given)).toMatchObject({ ok: false, reason: { code: 'temperature-out-of-range' } });
    expect(
      airFrom({
        ...givenAir(0, standard(0), relative(0)),
        humidity: { kind: 'relative', value: Number.NaN as Ratio },
      }).ok,
    ).toBe(false);
    expect(
      airFrom({
        ...givenAir(0, standard(0), relative(0)),
        pressure: { kind: 'altimeter', value: Number.NaN as Pascal, elevation: Number.NaN as Metre },
      }).ok,
    ).toBe(false);
  });

  it('never throws for any finite numbers', () => {
    const any = fc.double({ noNaN: true, noDefaultInfinity: true });
    const near = fc.double({ min: -500, max: 2000, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(any, near), fc.oneof(any, near), fc.oneof(any, near), near, (t, p, h, m) => {
        for (const humidity of [
          { kind: 'relative', value: ratio(h) },
          { kind: 'dew-point', value: kelvin(h) },
          { kind: 'frost-point', value: kelvin(h) },
        ] as const)
          for (const pressure of [
            { kind: 'station', value: pascal(p) },
            { kind: 'sea-level', value: pascal(p), elevation: m as Metre },
            { kind: 'standard', elevation: m as Metre },
          ] as const) {
            const air = airFrom({ temperature: kelvin(t), pressure, humidity });
            expect(
              air.ok ? air.value.density > 0.3 && air.value.density < 2.2 : air.reason.code.length > 0,
            ).toBe(true);
          }
      }),
      { numRuns: 1000, seed: 42 },
    );
  });
});

describe('air at known values', () => {
  const state = {
    temperature: celsiusToKelvin(-20),
    pressure: hectopascalToPascal(990),
    relativeHumidity: ratio(0.8),
    pressureFrom: 'station',
  } as const;

  it('is the air that was given as such', () => {
    expect(airAt(state)).toEqual(airOf(-20, station(990), relative(0.8)));
  });

  it('may be hotter than any weather: 75 °C under a hood', () => {
    const air = airAt({ ...state, temperature: celsiusToKelvin(75), relativeHumidity: ratio(0.01) });
    expectWithin(air.density, 990e2 / (287.05 * 348.15), 2e-3);
  });

  it('throws on what cannot be: that is a mistake in the program', () => {
    expect(() => airAt({ ...state, temperature: kelvin(0) })).toThrow(RangeError);
    expect(() => airAt({ ...state, pressure: pascal(-1) })).toThrow(RangeError);
    expect(() => airAt({ ...state, relativeHumidity: ratio(-0.1) })).toThrow(RangeError);
  });

  it('leaves what it was given as it was', () => {
    const frozen = Object.freeze({ ...state });
    airAt(frozen);
    expect(frozen).toEqual(state);
  });
});
