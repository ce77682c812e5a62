import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  altimeterFromStation,
  seaLevelFromStation,
  stationFromAltimeter,
  stationFromSeaLevel,
  stationPressure,
} from '@/lib/air/pressure';
import { densityAltitude, pressureAltitude, standardPressure } from '@/lib/air/standard-atmosphere';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre, pascal, ratio } from '@/lib/units/quantity';
import { standardDensity } from '@/tests/support/standard-density';
import { altimeter, expectWithin, seaLevel, standard, station } from '../support/air';

const cold = celsiusToKelvin(-10);
const damp = ratio(0.8);

describe('the four kinds of pressure', () => {
  it('station pressure is what the engine breathes, whatever the elevation', () => {
    expect(stationPressure(station(835, 1600), cold, damp)).toBe(83_500);
    expect(stationPressure(station(835), cold, damp)).toBe(83_500);
  });

  it('at sea level are all the same number', () => {
    expectWithin(stationPressure(altimeter(1020, 0), cold, damp), 102_000, 1e-12);
    expectWithin(stationPressure(seaLevel(1020, 0), cold, damp), 102_000, 1e-12);
    expect(stationPressure(standard(0), cold, damp)).toBe(101_325);
  });

  it('at 2000 m differ by a quarter from a sea-level number', () => {
    // ISO 2533: 794.952 hPa at 2000 m geopotential.
    expectWithin(stationPressure(standard(2000), cold, damp), 79_495.2, 1e-6);
    expect(stationPressure(altimeter(1013.25, 2000), cold, damp)).toBeCloseTo(79_495.2, 0);
  });

  it('reduce sea-level pressure more steeply in cold air', () => {
    const at = (celsius: number) => stationPressure(seaLevel(1013.25, 2000), celsiusToKelvin(celsius), damp);
    expect(at(-30)).toBeLessThan(at(0));
    expect(at(0)).toBeLessThan(at(30));
    // At the standard temperature of the height, 2 °C, it is the standard pressure, but for humidity and the
    // constants of WMO-No. 8 (0.06 % in the exponent): 0.1 %.
    expectWithin(stationPressure(seaLevel(1013.25, 2000), celsiusToKelvin(2), ratio(0)), 79_495.2, 1e-3);
  });
});

describe('pressures there and back', () => {
  const hpa = fc.double({ min: 450, max: 1100, noNaN: true });
  const elevation = fc.double({ min: -430, max: 6000, noNaN: true }).map(metre);
  const column = fc.record({
    elevation,
    temperature: fc.double({ min: -70, max: 60, noNaN: true }).map(celsiusToKelvin),
    relativeHumidity: fc.double({ min: 0, max: 1, noNaN: true }).map(ratio),
  });

  it('altimeter setting to station pressure and back is the same to 1e-12', () => {
    fc.assert(
      fc.property(hpa, elevation, (p, h) => {
        const pressure = hectopascalToPascal(p);
        expectWithin(altimeterFromStation(stationFromAltimeter(pressure, h), h), pressure, 1e-12);
      }),
      { numRuns: 500, seed: 61 },
    );
  });

  it('sea-level pressure to station pressure and back is the same to 1e-12', () => {
    fc.assert(
      fc.property(hpa, column, (p, c) => {
        const pressure = hectopascalToPascal(p);
        expectWithin(seaLevelFromStation(stationFromSeaLevel(pressure, c), c), pressure, 1e-12);
      }),
      { numRuns: 500, seed: 62 },
    );
  });

  it('the standard atmosphere is found again from its pressure and its density', () => {
    fc.assert(
      fc.property(elevation, (h) => {
        expect(Math.abs(pressureAltitude(standardPressure(h)) - h)).toBeLessThan(1e-6);
        expect(Math.abs(densityAltitude(standardDensity(h)) - h)).toBeLessThan(0.05);
      }),
      { numRuns: 500, seed: 63 },
    );
  });

  it('a higher setting is a higher pressure, a higher place a lower one', () => {
    fc.assert(
      fc.property(hpa, elevation, (p, h) => {
        const at = (hectopascals: number, metres: number) =>
          stationFromAltimeter(hectopascalToPascal(hectopascals), metre(metres));
        expect(at(p + 1, h)).toBeGreaterThan(at(p, h));
        expect(at(p, h + 1)).toBeLessThan(at(p, h));
      }),
      { numRuns: 200, seed: 64 },
    );
    expect(stationFromAltimeter(pascal(101_325), metre(0))).toBeCloseTo(101_325, 6);
  });
});
