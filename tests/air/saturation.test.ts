import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dewPointOf,
  frostPointOf,
  saturationOverIce,
  saturationOverWater,
  TRIPLE_POINT_K,
} from '@/lib/air/saturation';
import { kelvin, pascal } from '@/lib/units/quantity';

describe('dew point', () => {
  it('is found again to 1e-9 K from any vapour pressure of -100 to 60 °C', () => {
    fc.assert(
      fc.property(fc.double({ min: 173.15, max: 333.15, noNaN: true }), (t) => {
        expect(Math.abs(dewPointOf(saturationOverWater(kelvin(t)))! - t)).toBeLessThan(1e-9);
      }),
      { numRuns: 2000, seed: 51 },
    );
  });

  it('is found at and around 0 °C, where two equations meet', () => {
    for (const t of [273.1, 273.149_999_999, 273.15, 273.150_000_001, 273.16, 273.2])
      expect(Math.abs(dewPointOf(saturationOverWater(kelvin(t)))! - t)).toBeLessThan(1e-9);
  });

  it('is null without water, and for air drier than the equation reaches', () => {
    expect(dewPointOf(pascal(0))).toBeNull();
    expect(dewPointOf(pascal(1e-300))).toBeNull();
    expect(dewPointOf(pascal(-1))).toBeNull();
  });
});

describe('frost point', () => {
  it('is found again to 1e-9 K from any vapour pressure of -100 °C to the triple point', () => {
    fc.assert(
      fc.property(fc.double({ min: 173.15, max: TRIPLE_POINT_K - 1e-9, noNaN: true }), (t) => {
        expect(Math.abs(frostPointOf(saturationOverIce(kelvin(t)))! - t)).toBeLessThan(1e-9);
      }),
      { numRuns: 2000, seed: 52 },
    );
  });

  it('is null where there is no ice, and without water', () => {
    expect(frostPointOf(pascal(612))).toBeNull();
    expect(frostPointOf(pascal(0))).toBeNull();
  });

  it('lies above the dew point below freezing, and meets it at the triple point', () => {
    for (const t of [-60, -40, -20, -10, -1]) {
      const vapour = saturationOverIce(kelvin(t + 273.15));
      expect(dewPointOf(vapour)!).toBeLessThan(frostPointOf(vapour)!);
    }
    // IAPWS triple point 611.657 Pa; the water equation of CIPM-2007 is 0.02 % off there: 3 mK.
    expect(Math.abs(dewPointOf(pascal(611.657))! - TRIPLE_POINT_K)).toBeLessThan(0.003);
  });
});

describe('saturation pressure', () => {
  it('rises with temperature without a step, over water and over ice', () => {
    let before = { water: 0, ice: 0 };
    for (let t = 173.15; t <= 373.15; t += 0.01) {
      const now = { water: saturationOverWater(kelvin(t)), ice: saturationOverIce(kelvin(t)) };
      expect(now.water).toBeGreaterThan(before.water);
      expect(now.ice).toBeGreaterThan(before.ice);
      // 0.2 % is what a hundredth of a kelvin makes at -100 °C.
      if (before.water > 0) expect(now.water / before.water).toBeLessThan(1.002);
      before = now;
    }
  });

  it('has no step at 0 °C, where the two equations for water meet', () => {
    const [below, above] = [
      saturationOverWater(kelvin(273.15 - 1e-9)),
      saturationOverWater(kelvin(273.15 + 1e-9)),
    ];
    // 7 % per kelvin over 2e-9 K.
    expect(above / below - 1).toBeGreaterThan(0);
    expect(above / below - 1).toBeLessThan(2e-10);
  });
});
