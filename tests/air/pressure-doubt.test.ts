import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { stationFromAltimeter } from '@/lib/air/pressure';
import { doubtBeside, type PressureDoubt, pressureDoubt, seaLevelOf } from '@/lib/air/pressure-doubt';
import { impliedSeaLevel } from '@/lib/air/sea-level-weather';
import { movePressure } from '@/lib/hours/elevation-shift';
import {
  celsiusToKelvin,
  hectopascalToPascal,
  inchOfMercuryToPascal,
  pascalToHectopascal,
} from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { airOf, altimeter, givenAir, relative, seaLevel, station } from '../support/air';

const HUMID = relative(0.7);

type Verdict = { readonly state: 'passes' } | { readonly state: 'refused' } | PressureDoubt;

/** What becomes of a pressure typed at a height: it passes, is asked about, or is refused. */
function verdictOn(pressure: PressureGiven, celsius = -10): Verdict {
  const air = airFrom(givenAir(celsius, pressure, HUMID));
  if (!air.ok) return { state: 'refused' };
  return pressureDoubt(air.value, pressure.elevation ?? metre(0)) ?? { state: 'passes' };
}

const passes = (pressure: PressureGiven, celsius?: number) =>
  expect(verdictOn(pressure, celsius)).toEqual({ state: 'passes' });
const FEET = 0.3048;

describe('a sea-level number typed as station pressure', () => {
  it.each([
    ['1022 hPa at 300 m', hectopascalToPascal(1022), 300],
    ['30.05 inHg at 900 ft', inchOfMercuryToPascal(30.05), 900 * FEET],
    ['30.05 inHg at 1320 ft', inchOfMercuryToPascal(30.05), 1320 * FEET],
    ['1013.25 hPa at 402 m', hectopascalToPascal(1013.25), 402],
    ['1013.25 hPa at 240 m', hectopascalToPascal(1013.25), 240],
  ])('is asked about, not refused and not passed: %s', (_, pressure, height) => {
    for (const celsius of [-30, -10, 10, 30]) {
      const verdict = verdictOn({ kind: 'station', value: pressure, elevation: metre(height) }, celsius);
      expect(verdict).toMatchObject({
        kind: 'station',
        number: pressure,
        likely: 'sea-level',
        against: null,
      });
    }
  });

  it.each([
    [100, 1028, 1027],
    [200, 1016, 1015],
    [300, 1004, 1003],
    [450, 987, 985],
  ])('at %d m is asked about from %d hPa, and at %d is weather as well', (height, asked, plain) => {
    expect(verdictOn(station(asked, height))).toMatchObject({ likely: 'sea-level' });
    passes(station(plain, height));
  });

  it.each([
    [465, 'a cold night', 10],
    [505, 'a hot day', 35],
  ])(
    'is asked about or refused from %d m up in %s, whatever usual weather it is of',
    (lowest, _, hottest) => {
      fc.assert(
        fc.property(
          fc.double({ min: lowest, max: 6000, noNaN: true }),
          fc.double({ min: 985, max: 1040, noNaN: true }),
          fc.double({ min: -45, max: hottest, noNaN: true }),
          (height, hpa, celsius) => {
            const verdict = verdictOn(station(hpa, height), celsius);
            return 'state' in verdict ? verdict.state === 'refused' : verdict.likely === 'sea-level';
          },
        ),
        { numRuns: 5000, seed: 20270116 },
      );
    },
  );

  it('below 80 m is the same air for a jet, and is not asked about for its kind', () => {
    for (const height of [-50, 0, 30, 75]) for (const hpa of [990, 1013, 1030]) passes(station(hpa, height));
  });
});

describe('a true station pressure in usual weather is never asked about, at any height from 0 to 3000 m', () => {
  const weather = {
    height: fc.double({ min: 0, max: 3000, noNaN: true }),
    hpa: fc.double({ min: 985.5, max: 1039.5, noNaN: true }),
    celsius: fc.double({ min: -45, max: 35, noNaN: true }),
  };

  it('through a column of the air of the hour', () => {
    fc.assert(
      fc.property(weather.height, weather.hpa, weather.celsius, (height, hpa, celsius) => {
        // Hydrostatic column of dry air up from sea level, ISO 2533 with a free start.
        const bottom = {
          pressure: hectopascalToPascal(hpa),
          temperature: celsiusToKelvin(celsius + 0.0065 * height),
        };
        const pressure = movePressure(bottom, { from: metre(0), to: metre(height) });
        passes({ kind: 'station', value: pressure, elevation: metre(height) }, celsius);
      }),
      { numRuns: 5000, seed: 20270116 },
    );
  });

  it('and where only the ground is cold, as an altimeter has it', () => {
    fc.assert(
      fc.property(weather.height, weather.hpa, weather.celsius, (height, hpa, celsius) => {
        const pressure = stationFromAltimeter(hectopascalToPascal(hpa), metre(height));
        passes({ kind: 'station', value: pressure, elevation: metre(height) }, celsius);
      }),
      { numRuns: 5000, seed: 20270116 },
    );
  });

  it('nor as an altimeter setting or a sea-level pressure', () => {
    for (const height of [0, 100, 402, 700]) {
      for (const hpa of [986, 1013, 1039]) {
        passes(altimeter(hpa, height));
        passes(seaLevel(hpa, height));
      }
    }
  });
});

describe('records are not refused', () => {
  // World Meteorological Organization, archive of extremes: Tosontsengel, 30 December 2004.
  const TOSONTSENGEL = {
    elevation: metre(1725.8),
    temperature: celsiusToKelvin(-44.8),
    relativeHumidity: ratio(0.7),
  };

  it('846.5 hPa at 1725.8 m and -44.8 °C is 1089.1 hPa through its own air, and no more than 1042 as an altimeter', () => {
    const { lowest, highest } = impliedSeaLevel(hectopascalToPascal(846.5), TOSONTSENGEL);
    expect(Math.abs(pascalToHectopascal(highest) - 1089.1)).toBeLessThan(0.3);
    expect(pascalToHectopascal(lowest)).toBeLessThan(1042);
    passes(station(846.5, 1725.8), -44.8);
  });

  it('1083.8 hPa at 261 m (the same archive: Agata, 31 December 1968) is asked about', () => {
    // The day's lowest temperature, -50 °C, as told in accounts of it.
    const air = airOf(-50, seaLevel(1083.8, 261), HUMID);
    const pressure: PressureGiven = { kind: 'station', value: air.pressure, elevation: metre(261) };
    expect(verdictOn(pressure, -50)).toMatchObject({ kind: 'station', likely: null });
  });

  it('955.2 hPa at sea level (National Weather Service Duluth: Bigfork, 26 October 2010) is asked about', () => {
    const pressure = airOf(5, seaLevel(955.2, 411), HUMID).pressure;
    expect(verdictOn({ kind: 'station', value: pressure, elevation: metre(411) }, 5)).toMatchObject({
      likely: null,
    });
    expect(verdictOn(seaLevel(955.2, 411), 5)).toMatchObject({ kind: 'sea-level', likely: 'station' });
  });
});

describe('a station pressure given as another kind', () => {
  it.each(['sea-level', 'altimeter'] as const)('is asked about as %s', (kind) => {
    for (const hpa of [945, 960, 975]) {
      const pressure: PressureGiven = { kind, value: hectopascalToPascal(hpa), elevation: metre(402) };
      const verdict = verdictOn(pressure);
      expect(verdict).toMatchObject({ kind, likely: 'station' });
      if ('number' in verdict) expect(pascalToHectopascal(verdict.number)).toBeCloseTo(hpa, 6);
    }
  });

  it('from a hill of 100 m is no other air, and only a deep storm is asked about', () => {
    passes(seaLevel(990, 100));
    expect(verdictOn(seaLevel(965, 100))).toMatchObject({ kind: 'sea-level' });
  });
});

describe('beside another day at the same place', () => {
  const air = (pressure: PressureGiven) => airOf(-10, pressure, HUMID);
  const beside = (pressure: PressureGiven, other: PressureGiven, height: number) =>
    doubtBeside(air(pressure), metre(height), seaLevelOf([air(other)], metre(height)));

  it('two kinds of number give themselves away where neither is odd', () => {
    passes(station(1012, 200));
    passes(station(988, 200));
    expect(beside(station(1012, 200), station(988, 200), 200)).toMatchObject({ likely: 'sea-level' });
    expect(beside(station(988, 200), station(1012, 200), 200)).toBeNull();
    expect(beside(seaLevel(988, 200), station(988, 200), 200)).toMatchObject({ likely: 'station' });
  });

  it('two days of the same kind do not', () => {
    for (const height of [0, 100, 200, 300, 402])
      for (const weather of [-19, -10, 0, 10, 19]) {
        const [one, other] = [altimeter(1010, height), altimeter(1010 + weather, height)].map(air);
        const stationOf = (pascals: number): PressureGiven => station(pascals / 100, height);
        expect(beside(stationOf(one!.pressure), stationOf(other!.pressure), height)).toBeNull();
      }
  });

  it('a storm far from the other day is let through where no other kind explains it', () => {
    expect(beside(station(986, 10), station(1035, 10), 10)).toBeNull();
    expect(beside(station(1035, 10), station(986, 10), 10)).toBeNull();
  });
});
