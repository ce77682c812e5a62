import { describe, expect, it } from 'vitest';
import { studentHalfWidth, studentWithin } from '@/lib/power/student-t';
import { expectWithin } from '../support/air';

describe('the Student distribution', () => {
  // Printed tables of percentage points, two-sided (Abramowitz & Stegun, table 26.10), three decimals or more.
  it.each([
    [0.9, 1, 6.314],
    [0.9, 2, 2.92],
    [0.9, 4, 2.132],
    [0.9, 10, 1.812],
    [0.95, 1, 12.706],
    [0.95, 2, 4.303],
    [0.95, 4, 2.776],
    [0.95, 30, 2.042],
    [0.99, 5, 4.032],
    [0.5, 3, 0.765],
    [0.95, 120, 1.98],
  ])('holds %d within its half-width at %d degrees of freedom: %d', (confidence, df, printed) => {
    expect(Math.abs(studentHalfWidth(confidence, df) - printed)).toBeLessThanOrEqual(0.0006);
  });

  it('is the normal distribution for very many degrees of freedom', () => {
    // Normal quantiles 1.644854 and 1.959964 (Abramowitz & Stegun, table 26.5).
    expectWithin(studentHalfWidth(0.9, Number.POSITIVE_INFINITY), 1.644854, 2e-6);
    expectWithin(studentHalfWidth(0.95, 1e9), 1.959964, 2e-6);
  });

  it('has a closed form at one and at two degrees of freedom', () => {
    // P(|t| < s) = 2/π atan s at 1, s/sqrt(2 + s²) at 2.
    for (const s of [0.01, 0.3, 1, 2.5, 40]) {
      expect(studentWithin(s, 1)).toBeCloseTo((2 / Math.PI) * Math.atan(s), 12);
      expect(studentWithin(s, 2)).toBeCloseTo(s / Math.sqrt(2 + s * s), 12);
    }
  });

  it('finds the half-width again, also between whole degrees of freedom', () => {
    for (const df of [1, 1.7, 3.99, 12.3, 400])
      for (const confidence of [0.5, 0.8, 0.9, 0.95, 0.999])
        expectWithin(studentWithin(studentHalfWidth(confidence, df), df), confidence, 1e-10);
  });
});
