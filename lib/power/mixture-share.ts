import { ratio } from '@/lib/units/quantity';
import type { Pull } from './pull';
import { mixtureFactor } from './relative-power';

/** A belief about one number. */
export type Belief = { readonly mean: number; readonly variance: number };

/** A standard normal distribution as points and weights: ±4 sd in quarter steps, weights summing to 1. */
const NORMAL_POINTS = (() => {
  const points = Array.from({ length: 33 }, (_, i) => (i - 16) / 4);
  const heights = points.map((z) => Math.exp((-z * z) / 2));
  const total = heights.reduce((sum, h) => sum + h, 0);
  return points.map((z, i) => ({ z, weight: (heights[i] ?? 0) / total }));
})();

/** So rich that an engine hardly runs; keeps the logarithm finite. */
const LEAST_MIXTURE_FACTOR = 0.05;

function meanAndVariance(values: readonly { readonly value: number; readonly weight: number }[]): Belief {
  const mean = values.reduce((sum, { value, weight }) => sum + value * weight, 0);
  const variance = values.reduce((sum, { value, weight }) => sum + (value - mean) ** 2 * weight, 0);
  return { mean, variance };
}

/**
 * ln of the power that mixture leaves, averaged over a side's pulls. What is not known about the drift is mostly
 * how rich the baseline was, and so is taken to be wrong by the same amount in all pulls of the side.
 */
function sideLogMixture(pulls: readonly Pull[], richPowerLoss: number): Belief {
  return meanAndVariance(
    NORMAL_POINTS.map(({ z, weight }) => {
      const logs = pulls.map(({ drift }) => {
        const factor = mixtureFactor(ratio(drift.mean + z * drift.sd), richPowerLoss);
        return Math.log(Math.max(LEAST_MIXTURE_FACTOR, factor));
      });
      return { value: logs.reduce((sum, log) => sum + log, 0) / logs.length, weight };
    }),
  );
}

/**
 * Change of ln power that mixture alone makes from before to after, with what is not known about either drift
 * (independent on the two sides: the part may have changed it) and about k (the same on both).
 */
export function mixtureShare(
  before: readonly Pull[],
  after: readonly Pull[],
  richPowerLoss: { readonly mean: number; readonly sd: number },
): Belief {
  const byLoss = NORMAL_POINTS.map(({ z, weight }) => {
    const k = Math.max(0, richPowerLoss.mean + z * richPowerLoss.sd);
    const [from, to] = [sideLogMixture(before, k), sideLogMixture(after, k)];
    return { value: to.mean - from.mean, within: from.variance + to.variance, weight };
  });
  const between = meanAndVariance(byLoss);
  const within = byLoss.reduce((sum, point) => sum + point.within * point.weight, 0);
  return { mean: between.mean, variance: between.variance + within };
}
