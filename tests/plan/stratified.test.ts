import { describe, expect, it } from 'vitest';
import { normalQuantile } from '@/lib/plan/normal';
import { keptNormals, seededUniform, stratifiedNormals } from '@/lib/plan/stratified';
import { gaussian } from '@/tests/support/plain-draws';

describe('Stratified draws', () => {
  it('come in mirror images, with a mean square of 1, for any number of draws', () => {
    for (const draws of [2, 3, 16, 63, 64, 200]) {
      const normals = stratifiedNormals(draws, 5);
      for (const input of [0, 1, 5, 6, 40]) {
        const column = normals.input(input);
        for (let s = 0; s < draws; s++) expect(column[s]! + column[draws - 1 - s]!).toBeCloseTo(0, 9);
        expect(column.reduce((sum, value) => sum + value * value, 0) / draws).toBeCloseTo(1, 9);
      }
    }
    expect(stratifiedNormals(1, 5).input(3)[0]).toBeCloseTo(0, 9);
  });

  it('keep closer to one in every stratum than plain draws do, on average', () => {
    const strata = Array.from({ length: 64 }, (_, i) => normalQuantile((i + 0.5) / 64));
    const offOf = (column: Iterable<number>) => {
      const sorted = [...column].sort((a, b) => a - b);
      return Math.sqrt(sorted.reduce((sum, value, i) => sum + (value - strata[i]!) ** 2, 0) / 64);
    };
    const next = gaussian(1);
    const plain = Array.from({ length: 100 }, () => offOf(Array.from({ length: 64 }, next)));
    const drawn = [1, 2, 3, 4].flatMap((seed) =>
      [0, 1, 5, 6, 40].map((input) => offOf(stratifiedNormals(64, seed).input(input))),
    );
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(drawn)).toBeLessThan(mean(plain));
  });

  it('pair the first eight inputs with all others without a common direction', () => {
    for (const seed of [1, 2, 3]) {
      const normals = stratifiedNormals(64, seed);
      for (const a of [1, 2, 5, 7, 8, 30, 41])
        for (let b = 0; b < Math.min(a, 8); b++) {
          const [x, y] = [normals.input(a), normals.input(b)];
          expect(x.reduce((sum, value, s) => sum + value * y[s]!, 0) / 64, `${a}, ${b}`).toBeCloseTo(0, 9);
        }
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
