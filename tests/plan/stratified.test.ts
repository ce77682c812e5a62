import { describe, expect, it } from 'vitest';
import { normalQuantile } from '@/lib/plan/normal';
import { keptNormals, seededUniform, stratifiedNormals } from '@/lib/plan/stratified';

describe('Stratified draws', () => {
  it('take every stratum of every input exactly once, for any number of draws', () => {
    for (const draws of [1, 2, 63, 64, 200]) {
      const normals = stratifiedNormals(draws, 5);
      const strata = Array.from({ length: draws }, (_, i) => normalQuantile((i + 0.5) / draws));
      for (const input of [0, 1, 5, 6, 40])
        expect([...normals.input(input)].sort((a, b) => a - b)).toEqual(strata);
    }
  });

  it('pair the inputs without a common direction', () => {
    const normals = stratifiedNormals(64, 1);
    for (let a = 0; a < 8; a++)
      for (let b = 0; b < a; b++) {
        const [x, y] = [normals.input(a), normals.input(b)];
        const correlation = x.reduce((sum, value, s) => sum + value * y[s]!, 0) / 64;
        // 64 pairs at random scatter by 1/8; more than three times that would be a pattern.
        expect(Math.abs(correlation), `${a}, ${b}`).toBeLessThan(0.375);
      }
  });

  it('are the same for the same seed and others for another', () => {
    expect(stratifiedNormals(64, 3).input(7)).toEqual(stratifiedNormals(64, 3).input(7));
    expect(keptNormals(64, 3).input(2)).toEqual(stratifiedNormals(64, 3).input(2));
    expect(stratifiedNormals(64, 3).input(7)).not.toEqual(stratifiedNormals(64, 4).input(7));
    expect(stratifiedNormals(64, 3).input(0)).not.toEqual(stratifiedNormals(64, 4).input(0));
  });

  it('refuse numbers of draws that make no sense', () => {
    for (const draws of [0, -1, 1.5, Number.NaN, 1e6])
      expect(() => stratifiedNormals(draws, 1)).toThrow(RangeError);
  });
});

describe('Seeded numbers', () => {
  it('fill ten equal bins evenly', () => {
    const uniform = seededUniform(9, 2);
    const bins = new Array<number>(10).fill(0);
    for (let i = 0; i < 20_000; i++) bins[Math.floor(uniform() * 10)]! += 1;
    // Chi-square with 9 degrees of freedom: 27.88 is passed once in a thousand (Abramowitz & Stegun, table 26.8).
    const chi = bins.reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0);
    expect(chi).toBeLessThan(27.88);
  });
});
