import { type Belief, logEvidence, posteriorOf, type RegressionRow } from './regression';
import type { Vector } from './small-matrix';

/** A belief that may be narrower or wider than stated: several normals with weights that add up to 1. */
export type BeliefMixture = readonly { readonly weight: number; readonly belief: Belief }[];

/**
 * The first two coefficients' spread, as shares of the stated variance with weights. Mean, variances and correlation of
 * the whole are those stated (0.5·0.4 + 0.35·1 + 0.15·3 = 1), but the tails are heavy, so that a prior which clear
 * evidence contradicts gives way instead of holding the answer back. Judgement: near a Student distribution of 4 degrees.
 */
const SPREADS = [
  { weight: 0.5, variance: 0.4 },
  { weight: 0.35, variance: 1 },
  { weight: 0.15, variance: 3 },
] as const;

/** The heavy-tailed form of a normal belief in (n_p, n_T, levels...); the levels stay as they are. */
export function heavyTailed({ mean, covariance }: Belief): BeliefMixture {
  return SPREADS.map(({ weight, variance }) => ({
    weight,
    belief: {
      mean,
      covariance: covariance.map((row, i) =>
        row.map((value, j) => (i < 2 && j < 2 ? value * variance : value)),
      ),
    },
  }));
}

/** Each part's own posterior, weighted by how well the part foresaw the rows. */
export function mixturePosterior(
  prior: BeliefMixture,
  rows: readonly RegressionRow[],
  weights?: Vector,
): BeliefMixture {
  const parts = prior.map(({ weight, belief }) => {
    const posterior = posteriorOf(belief, rows, weights);
    return { belief: posterior, log: Math.log(weight) + logEvidence(belief, posterior) };
  });
  const largest = Math.max(...parts.map((part) => part.log));
  const total = parts.reduce((sum, part) => sum + Math.exp(part.log - largest), 0);
  return parts.map(({ belief, log }) => ({ belief, weight: Math.exp(log - largest) / total }));
}

/** The normal with the mixture's mean and covariance. */
export function momentsOf(mixture: BeliefMixture): Belief {
  const average = (of: (belief: Belief) => number) =>
    mixture.reduce((sum, { weight, belief }) => sum + weight * of(belief), 0);
  const indexes = mixture[0]!.belief.mean.map((_, i) => i);
  const mean = indexes.map((i) => average((belief) => belief.mean[i]!));
  const covariance = indexes.map((i) =>
    indexes.map((j) =>
      average(
        (belief) => belief.covariance[i]![j]! + (belief.mean[i]! - mean[i]!) * (belief.mean[j]! - mean[j]!),
      ),
    ),
  );
  return { mean, covariance };
}
