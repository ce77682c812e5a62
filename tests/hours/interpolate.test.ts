import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Point, shapePreservingCurve } from '@/lib/hours/interpolate';

const pointsOf = (xs: readonly number[], ys: readonly number[]): Point[] =>
  xs.map((x, i) => ({ x, y: ys[i] ?? Number.NaN }));

/** Sorted points with distinct x, as typed hours are. */
const typed = fc
  .uniqueArray(fc.integer({ min: 0, max: 2880 }), { minLength: 1, maxLength: 12 })
  .chain((xs) =>
    fc.tuple(
      fc.constant([...xs].sort((a, b) => a - b)),
      fc.array(fc.double({ min: -60, max: 50, noNaN: true }), { minLength: xs.length, maxLength: xs.length }),
    ),
  )
  .map(([xs, ys]) => pointsOf(xs, ys));

describe('the curve between typed points', () => {
  it('reproduces the published example of the monotone interpolant', () => {
    // NAG Library, e01bef and e01bff (derived from PCHIM and PCHFE), example program data and results, 4 decimals.
    const data = pointsOf(
      [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20],
      [0, 0.27643e-4, 0.4375e-1, 0.16918, 0.46943, 0.94374, 0.99864, 0.99992, 0.99999],
    );
    const printed = pointsOf(
      [7.99, 9.191, 10.392, 11.593, 12.794, 13.995, 15.196, 16.397, 17.598, 18.799, 20],
      [0, 0.464, 0.9645, 0.9965, 0.9992, 0.9998, 0.9999, 1, 1, 1, 1],
    );
    const curve = shapePreservingCurve(data);
    // Half of the last printed digit.
    for (const { x, y } of printed)
      expect(Math.abs((curve(x) ?? Number.NaN) - y)).toBeLessThanOrEqual(0.5e-4);
  });

  it('is the straight line where the points lie on one', () => {
    const curve = shapePreservingCurve(pointsOf([0, 60, 90, 300], [-4, -6, -7, -14]));
    for (const x of [0, 17, 60, 75, 200, 300]) expect(curve(x)).toBeCloseTo(-4 - x / 30, 12);
  });

  it('passes through every point and says nothing outside them', () => {
    fc.assert(
      fc.property(typed, (points) => {
        const curve = shapePreservingCurve(points);
        for (const { x, y } of points) expect(curve(x)).toBeCloseTo(y, 10);
        expect(curve((points[0]?.x ?? 0) - 1)).toBeNull();
        expect(curve((points.at(-1)?.x ?? 0) + 1)).toBeNull();
        expect(curve(Number.NaN)).toBeNull();
      }),
    );
  });

  it('never leaves the range of its two neighbours, and never turns between them', () => {
    fc.assert(
      fc.property(typed, (points) => {
        const curve = shapePreservingCurve(points);
        for (const [i, b] of points.entries()) {
          const a = points[i - 1];
          if (a === undefined) continue;
          const direction = Math.sign(b.y - a.y);
          let before = a.y;
          for (let step = 1; step <= 40; step++) {
            const y = curve(a.x + ((b.x - a.x) * step) / 40) ?? Number.NaN;
            expect(y).toBeGreaterThanOrEqual(Math.min(a.y, b.y) - 1e-9);
            expect(y).toBeLessThanOrEqual(Math.max(a.y, b.y) + 1e-9);
            expect((y - before) * direction).toBeGreaterThanOrEqual(-1e-9);
            before = y;
          }
        }
      }),
    );
  });

  it('does not depend on where zero is, which way temperature counts or how time is scaled', () => {
    fc.assert(
      fc.property(typed, fc.double({ min: 0, max: 1, noNaN: true }), (points, share) => {
        const [first, last] = [points[0]?.x ?? 0, points.at(-1)?.x ?? 0];
        const x = first + share * (last - first);
        const y = shapePreservingCurve(points)(x) ?? Number.NaN;
        const moved = points.map((p) => ({ x: 60 * p.x + 7, y: -1.8 * p.y + 32 }));
        expect(shapePreservingCurve(moved)(60 * x + 7)).toBeCloseTo(-1.8 * y + 32, 8);
      }),
    );
  });

  it('takes a single point as that point only', () => {
    const curve = shapePreservingCurve([{ x: 5, y: -12 }]);
    expect([curve(4.9), curve(5), curve(5.1)]).toEqual([null, -12, null]);
    expect(shapePreservingCurve([])(0)).toBeNull();
  });

  it('refuses points out of order, twice the same time, and what is no number', () => {
    expect(() => shapePreservingCurve(pointsOf([1, 0], [2, 3]))).toThrow('rising');
    expect(() => shapePreservingCurve(pointsOf([1, 1], [2, 3]))).toThrow('rising');
    expect(() => shapePreservingCurve(pointsOf([1, 2], [2, Number.NaN]))).toThrow('finite');
  });
});
