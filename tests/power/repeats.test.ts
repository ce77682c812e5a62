import { describe, expect, it } from 'vitest';
import { differenceOfMeans } from '@/lib/power/repeats';
import { expectWithin } from '../support/air';

describe('the difference of two groups of pulls', () => {
  it('has the variance and degrees of freedom of Welch', () => {
    // By hand: 1, 2, 3 has mean 2 and variance 1; 5, 7, 9, 11 mean 8 and variance 20/3. Variance of the difference
    // 1/3 + 5/3 = 2; degrees of freedom 4/[(1/9)/2 + (25/9)/3] = 4/0.98148 = 4.0755.
    const difference = differenceOfMeans([1, 2, 3], [5, 7, 9, 11], 0.01);
    expect(difference.mean).toBe(6);
    expectWithin(difference.variance, 2, 1e-12);
    expectWithin(difference.degreesOfFreedom, 4.0755, 1e-4);
    expect(difference.scatter).toBe('seen');
  });

  it('borrows the scatter of the side that has repeats', () => {
    // By hand: variance 1, once over 3 and once over 1: 4/3, two degrees of freedom.
    for (const difference of [
      differenceOfMeans([1, 2, 3], [5], 0.01),
      differenceOfMeans([5], [1, 2, 3], 0.01),
    ]) {
      expectWithin(difference.variance, 4 / 3, 1e-12);
      expect(difference.degreesOfFreedom).toBe(2);
      expect(difference.scatter).toBe('seen-on-one-side');
    }
  });

  it('assumes a scatter where there are no repeats', () => {
    const difference = differenceOfMeans([5], [5.02], 0.01);
    expectWithin(difference.variance, 2e-4, 1e-12);
    expect(difference.degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
    expect(difference.scatter).toBe('assumed');
  });

  it('never believes that equal numbers have no scatter', () => {
    expectWithin(differenceOfMeans([5, 5, 5], [5, 5, 5], 0.01).variance, (2 * 1e-6) / 3, 1e-9);
  });
});
