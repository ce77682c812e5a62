import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Climb, lapse, movePressure, moveSeries, moveTemperature } from '@/lib/hours/elevation-shift';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { type Kelvin, kelvin, metre, type Pascal } from '@/lib/units/quantity';
import { forecast, hour } from './nights';

type AirThere = { readonly temperature: Kelvin; readonly pressure: Pascal };

function moved(air: AirThere, climb: Climb, fall?: ReturnType<typeof lapse>): AirThere {
  return {
    temperature: moveTemperature(air.temperature, climb, fall),
    pressure: movePressure(air, climb, fall),
  };
}

const climbOf = (from: number, to: number): Climb => ({ from: metre(from), to: metre(to) });

describe('air moved up or down', () => {
  // ISO 2533:1975, printed tables, geopotential heights [m]: temperature [K], pressure [hPa].
  const TABLE = [
    [-1000, 294.65, 1139.29],
    [-500, 291.4, 1074.78],
    [0, 288.15, 1013.25],
    [100, 287.5, 1001.29],
    [300, 286.2, 977.725],
    [500, 284.9, 954.608],
    [800, 282.95, 920.763],
    [1000, 281.65, 898.746],
    [1500, 278.4, 845.56],
    [2000, 275.15, 794.952],
    [3000, 268.65, 701.085],
    [4000, 262.15, 616.402],
  ] as const;

  it.each(TABLE)('to %d m is the standard atmosphere, from wherever it starts', (to, t2, p2) => {
    for (const [from, t1, p1] of TABLE) {
      const there = moved({ temperature: kelvin(t1), pressure: hectopascalToPascal(p1) }, climbOf(from, to));
      expect(there.temperature).toBeCloseTo(t2, 9);
      // Six printed figures at both ends: half of the last digit is at most 7e-6 of either pressure.
      expect(Math.abs(pascalToHectopascal(there.pressure) / p2 - 1)).toBeLessThan(1.4e-5);
    }
  });

  it('comes back the way it went, inversion or not', () => {
    const height = fc.double({ min: -400, max: 4000, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 220, max: 320, noNaN: true }),
        fc.double({ min: 600, max: 1050, noNaN: true }),
        fc.tuple(height, height),
        fc.constantFrom(-0.02, -1e-9, 0, 1e-9, 0.0065, 0.0098),
        (t, p, [a, b], perMetre) => {
          const fall = lapse(perMetre);
          const start = { temperature: kelvin(t), pressure: hectopascalToPascal(p) };
          const back = moved(moved(start, climbOf(a, b), fall), climbOf(b, a), fall);
          expect(back.temperature).toBeCloseTo(t, 9);
          expect(back.pressure / start.pressure).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it('loses pressure faster where it is cold', () => {
    const fall = (celsius: number) => {
      const start = { temperature: celsiusToKelvin(celsius), pressure: hectopascalToPascal(980) };
      return 980 - pascalToHectopascal(movePressure(start, climbOf(200, 500)));
    };
    expect(fall(-30)).toBeGreaterThan(fall(15) * 1.15);
  });

  it('needs no fall to thin out: isothermal air halves in 5.5 km at 0 °C', () => {
    // ISO 2533:1975 eq. 13, isothermal layer: h = (R T/g) ln 2 = 5542 m at 273.15 K.
    const start = { temperature: celsiusToKelvin(0), pressure: hectopascalToPascal(1000) };
    expect(movePressure(start, climbOf(0, 5542), lapse(0)) / 100).toBeCloseTo(500, 1);
  });

  it('has no step where a fall becomes none', () => {
    const start = { temperature: celsiusToKelvin(-10), pressure: hectopascalToPascal(950) };
    const at = (fall: number) => movePressure(start, climbOf(0, 1200), lapse(fall));
    expect(Math.abs(at(1e-12) / at(0) - 1)).toBeLessThan(1e-12);
    expect(at(1e-5)).toBeLessThan(at(0));
  });

  it('refuses a fall that no air has', () => {
    expect(() => lapse(0.05)).toThrow(RangeError);
    expect(() => lapse(Number.NaN)).toThrow(RangeError);
  });

  it('takes a whole series along, and back to where it started', () => {
    const there = moveSeries(forecast([hour('18:00', -6)]), metre(1200));
    const back = moveSeries(there, metre(250));
    expect(back.hours[0]?.temperature).toBeCloseTo(celsiusToKelvin(-6), 9);
    expect(back.hours[0]?.pressure).toBeCloseTo(98_000, 6);
    expect(there.hours[0]?.pressure).toBeLessThan(88_000);
    expect(moveSeries(back, metre(250))).toBe(back);
  });
});
