import { describe, expect, it } from 'vitest';
import { normalBelow, normalDensity, normalQuantile } from '@/lib/plan/normal';

/** P(x) of Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 26.1, p. 966-972. */
const TABLE = [
  [0, 0.5],
  [0.5, 0.691462461274013],
  [1, 0.841344746068543],
  [1.5, 0.933192798731142],
  [2, 0.977249868051821],
  [3, 0.99865010196837],
] as const;

/** x for given tails Q of Abramowitz & Stegun, table 26.5, p. 976. */
const TAILS = [
  [0.05, 1.64485],
  [0.1, 1.28155],
  [0.025, 1.95996],
  [0.005, 2.57583],
  [0.001, 3.09023],
] as const;

describe('The normal law', () => {
  it.each(TABLE)('below %f holds what the printed table says', (x, p) => {
    expect(normalBelow(x)).toBeCloseTo(p, 13);
    expect(normalBelow(-x)).toBeCloseTo(1 - p, 13);
  });

  it.each(TAILS)('leaves a tail of %f where the printed table says', (q, x) => {
    expect(normalQuantile(1 - q)).toBeCloseTo(x, 5);
    expect(normalQuantile(q)).toBeCloseTo(-x, 5);
  });

  it('comes back through its inverse, far into both tails', () => {
    for (let p = 1e-12; p < 0.5; p *= 3) {
      expect(normalBelow(normalQuantile(p)) / p).toBeCloseTo(1, 9);
      expect(normalBelow(normalQuantile(1 - p))).toBeCloseTo(1 - p, 9);
    }
  });

  it('only rises, seam included, and its slope is its density', () => {
    for (let x = -9; x < 9; x += 0.01) {
      expect(normalBelow(x + 0.01)).toBeGreaterThanOrEqual(normalBelow(x));
      const slope = (normalBelow(x + 1e-4) - normalBelow(x - 1e-4)) / 2e-4;
      expect(Math.abs(slope - normalDensity(x))).toBeLessThan(1e-8);
    }
    expect(normalBelow(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalBelow(Number.NEGATIVE_INFINITY)).toBe(0);
  });

  it('has no quantile for what is no chance', () => {
    for (const p of [0, 1, -0.1, 1.1, Number.NaN]) expect(() => normalQuantile(p)).toThrow(RangeError);
  });
});
