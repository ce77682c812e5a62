/** The line closest to some points, by least squares, and how surely its slope is known. */
export type Line = { readonly slope: number; readonly slopeError: number };

/** The standard error is that of independent points around a line (common practice, no source). */
export function straightLine(points: readonly (readonly [x: number, y: number])[]): Line {
  const count = points.length;
  const mean = (of: (point: readonly [number, number]) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / count;
  const [x, y] = [mean(([at]) => at), mean(([, value]) => value)];
  const spread = points.reduce((sum, [at]) => sum + (at - x) ** 2, 0);
  const slope = points.reduce((sum, [at, value]) => sum + (at - x) * (value - y), 0) / spread;
  const left = points.reduce((sum, [at, value]) => sum + (value - y - slope * (at - x)) ** 2, 0);
  return { slope, slopeError: Math.sqrt(left / (count - 2) / spread) };
}
