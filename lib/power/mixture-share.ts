import { ratio } from '@/lib/units/quantity';
import type { Pull } from './pull';
import { mixtureFactor } from './relative-power';

/** A belief about one number. */
export type MixtureBelief = { readonly mean: number; readonly variance: number };

type WeightedPoint = { readonly z: number; readonly weight: number };

/** A standard normal distribution as evenly spaced points out to ±4 sd, with weights summing to 1. */
function normalPoints(step: number): readonly WeightedPoint[] {
  const half = Math.round(4 / step);
  const points = Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * step);
  const heights = points.map((z) => Math.exp((-z * z) / 2));
  const total = heights.reduce((sum, h) => sum + h, 0);
  return points.map((z, i) => ({ z, weight: (heights[i] ?? 0) / total }));
}

/** Drift has a kink at 0, where rich begins, and so takes finer steps than k. */
const DRIFT_POINTS = normalPoints(0.5);
const LOSS_POINTS = normalPoints(1);

/** So rich that an engine hardly runs; keeps the logarithm finite. */
const LEAST_MIXTURE_FACTOR = 0.05;

function meanAndVariance(
  values: readonly { readonly value: number; readonly weight: number }[],
): MixtureBelief {
  const mean = values.reduce((sum, { value, weight }) => sum + value * weight, 0);
  const variance = values.reduce((sum, { value, weight }) => sum + (value - mean) ** 2 * weight, 0);
  return { mean, variance };
}

/**
 * ln of the power that mixture leaves, averaged over a side's pulls. What is not known about the drift is mostly
 * how rich the baseline was, and so is taken to be wrong by the same amount in all pulls of the side.
 */
function sideLogMixture(pulls: readonly Pull[], richPowerLoss: number): MixtureBelief {
  return meanAndVariance(
    DRIFT_POINTS.map(({ z, weight }) => {
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
): MixtureBelief {
  const byLoss = LOSS_POINTS.map(({ z, weight }) => {
    const k = Math.max(0, richPowerLoss.mean + z * richPowerLoss.sd);
    const [from, to] = [sideLogMixture(before, k), sideLogMixture(after, k)];
    return { value: to.mean - from.mean, within: from.variance + to.variance, weight };
  });
  const between = meanAndVariance(byLoss);
  const within = byLoss.reduce((sum, point) => sum + point.within * point.weight, 0);
  return { mean: between.mean, variance: between.variance + within };
}
