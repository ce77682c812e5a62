import type { Percentiles } from './past';

/**
 * 10th, 50th and 90th percentile, on the straight line between neighbouring values: at rank h = (n - 1) p from the
 * lowest. Source: Hyndman and Fan, The American Statistician 50 (1996) 361, definition 7.
 */
export function percentiles<Q extends number>(
  values: readonly Q[],
  brand: (value: number) => Q,
): Percentiles<Q> {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): Q => {
    const rank = (sorted.length - 1) * share;
    const below = sorted[Math.floor(rank)];
    const above = sorted[Math.ceil(rank)];
    if (below === undefined || above === undefined) throw new RangeError('percentiles of nothing');
    return brand(below + (above - below) * (rank - Math.floor(rank)));
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
