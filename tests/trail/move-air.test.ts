import { describe, expect, it } from 'vitest';
import { lapse, pressureAt, temperatureAt, USUAL_LAPSE } from '@/lib/trail/move-air';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvin } from '@/lib/units/quantity';

describe('air moved up and down a mountain', () => {
  const seaLevel = { t: kelvin(288.15), p: hectopascalToPascal(1013.25) };

  it.each([
    [-1000, 294.65, 1139.29],
    [-500, 291.4, 1074.78],
    [1000, 281.65, 898.746],
    [2000, 275.15, 794.952],
    [3000, 268.65, 701.085],
    [4000, 262.15, 616.402],
  ])('is the standard atmosphere at %d m', (height, temperature, hectopascal) => {
    // ISO 2533:1975, printed tables, geopotential heights; half of the last printed digit is 7e-6 of the pressure.
    expect(temperatureAt(seaLevel.t, height, USUAL_LAPSE)).toBeCloseTo(temperature, 6);
    const p = pressureAt(seaLevel.p, seaLevel.t, { rise: height, fall: USUAL_LAPSE });
    expect(Math.abs(p / (hectopascal * 100) - 1)).toBeLessThan(1e-5);
  });

  it('comes back the way it went, inversion or not', () => {
    for (const fall of [-0.02, -1e-9, 0, 1e-9, 0.0065, 0.0098].map(lapse)) {
      const [t, p] = [celsiusToKelvin(-14), hectopascalToPascal(950)];
      const up = { t: temperatureAt(t, 900, fall), p: pressureAt(p, t, { rise: 900, fall }) };
      expect(temperatureAt(up.t, -900, fall)).toBeCloseTo(t, 9);
      expect(pressureAt(up.p, up.t, { rise: -900, fall })).toBeCloseTo(p, 4);
    }
  });

  it('needs no fall to thin out: isothermal air halves in 5.5 km at 0 °C', () => {
    // ISO 2533:1975 eq. 13, isothermal layer: h = (R T/g) ln 2 = 5542 m at 273.15 K.
    const p = pressureAt(hectopascalToPascal(1000), celsiusToKelvin(0), { rise: 5542, fall: lapse(0) });
    expect(p / 100).toBeCloseTo(500, 1);
  });

  it('has no step where a fall becomes none', () => {
    const at = (fall: number) =>
      pressureAt(hectopascalToPascal(950), celsiusToKelvin(-10), { rise: 1200, fall: lapse(fall) });
    expect(Math.abs(at(1e-12) / at(0) - 1)).toBeLessThan(1e-12);
    expect(at(1e-5)).toBeLessThan(at(0));
  });

  it('refuses a fall that no air has', () => {
    expect(() => lapse(0.05)).toThrow(RangeError);
    expect(() => lapse(Number.NaN)).toThrow(RangeError);
  });
});
