export type Point = { readonly x: number; readonly y: number };

/** Gives y at x; null outside the points. */
export type Curve = (x: number) => number | null;

/**
 * Slope at a point between two stretches: the weighted harmonic mean of their slopes, 0 at a peak or a trough.
 *
 *     m = 3 (h0 + h1) / ((h0 + 2 h1) / d0 + (2 h0 + h1) / d1)
 *
 * @param h0 length of the stretch before, h1 of the one after
 * @param d0 slope of the stretch before, d1 of the one after
 *
 * Brodlie's formula in F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304, eq. (5). It always
 * lies in the region that F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246, prove monotone.
 */
function innerSlope(h0: number, h1: number, d0: number, d1: number): number {
  return d0 * d1 <= 0 ? 0 : (3 * (h0 + h1)) / ((h0 + 2 * h1) / d0 + (2 * h0 + h1) / d1);
}

/**
 * Slope at the first or last point: of the parabola through the three points nearest the end, held back where it
 * would turn or overshoot.
 *
 *     m = ((2 h0 + h1) d0 - h0 d1) / (h0 + h1)
 *
 * End rule of routine PCHIM: F. N. Fritsch, PCHIP Final Specifications, UCID-30194, Lawrence Livermore (1982).
 */
function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const m = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (m * d0 <= 0) return 0;
  return d0 * d1 <= 0 && Math.abs(m) > 3 * Math.abs(d0) ? 3 * d0 : m;
}

function slopes(points: readonly Point[]): readonly number[] {
  const h = points.slice(1).map((point, i) => point.x - (points[i] as Point).x); // i < length - 1
  const d = points.slice(1).map((point, i) => (point.y - (points[i] as Point).y) / (h[i] as number));
  const last = h.length - 1;
  return points.map((_, i) => {
    const [h0, h1, d0, d1] =
      i === 0
        ? [h[0], h[1], d[0], d[1]]
        : i > last
          ? [h[last], h[last - 1], d[last], d[last - 1]]
          : [h[i - 1], h[i], d[i - 1], d[i]];
    if (h0 === undefined || d0 === undefined) return 0; // a single point
    if (h1 === undefined || d1 === undefined) return d0; // two points: a straight line
    return i === 0 || i > last ? endSlope(h0, h1, d0, d1) : innerSlope(h0, h1, d0, d1);
  });
}

/** Index of the stretch that holds x: points[i].x <= x <= points[i + 1].x. */
function stretchOf(points: readonly Point[], x: number): number {
  let low = 0;
  let high = points.length - 2;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((points[middle] as Point).x <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * A smooth curve through all points that never leaves the range of its two neighbours: a typed low stays the low.
 * Points must be sorted with x strictly increasing.
 *
 * Cubic Hermite on each stretch, t = (x - x0) / h:
 *
 *     y = (1 + 2 t)(1 - t)^2 y0 + t (1 - t)^2 h m0 + t^2 (3 - 2 t) y1 - t^2 (1 - t) h m1
 */
export function shapePreservingCurve(points: readonly Point[]): Curve {
  for (const [i, point] of points.entries())
    if (
      !Number.isFinite(point.x) ||
      !Number.isFinite(point.y) ||
      point.x <= (points[i - 1]?.x ?? Number.NEGATIVE_INFINITY)
    )
      throw new RangeError(`points must be finite and rising in x, point ${i} is not`);
  const m = slopes(points);
  return (x) => {
    const first = points[0];
    const last = points[points.length - 1];
    if (first === undefined || last === undefined || !(x >= first.x && x <= last.x)) return null;
    if (points.length === 1) return first.y;
    const i = stretchOf(points, x);
    const a = points[i] as Point; // two points at least, i <= length - 2
    const b = points[i + 1] as Point;
    const h = b.x - a.x;
    const m0 = m[i] ?? 0;
    const m1 = m[i + 1] ?? 0;
    const t = (x - a.x) / h;
    const s = 1 - t;
    return (1 + 2 * t) * s * s * a.y + t * s * s * h * m0 + t * t * (3 - 2 * t) * b.y - t * t * s * h * m1;
  };
}
