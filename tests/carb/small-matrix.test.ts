import { describe, expect, it } from 'vitest';
import { dot, inverse, logDeterminant, solve, times } from '@/lib/carb/small-matrix';

// A = [[4, 2, 0.6], [2, 5, 1], [0.6, 1, 3]]; by hand |A| = 4(15 − 1) − 2(6 − 0.6) + 0.6(2 − 3) = 44.6.
const A = [
  [4, 2, 0.6],
  [2, 5, 1],
  [0.6, 1, 3],
];

describe('small symmetric matrices', () => {
  it('solves what it was multiplied from', () => {
    const x = [1, -2, 3];
    solve(A, times(A, x)).forEach((value, i) => {
      expect(value).toBeCloseTo(x[i]!, 12);
    });
  });

  it('the inverse times the matrix is one', () => {
    inverse(A).forEach((row, i) => {
      A.forEach((_, j) => {
        expect(
          dot(
            row,
            A.map((line) => line[j]!),
          ),
        ).toBeCloseTo(i === j ? 1 : 0, 12);
      });
    });
  });

  it('has the determinant worked by hand', () => {
    expect(Math.exp(logDeterminant(A))).toBeCloseTo(44.6, 10);
  });

  it('refuses a matrix that is not positive definite', () => {
    expect(() =>
      inverse([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(RangeError);
  });
});
