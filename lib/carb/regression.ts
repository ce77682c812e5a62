import { dot, inverse, logDeterminant, type Matrix, times, type Vector } from './small-matrix';

/** One row of a linear model y = x·β + ε with ε normal of a known sd. */
export type RegressionRow = { readonly x: Vector; readonly y: number; readonly sd: number };

/** A normal belief in the coefficients β. */
export type Belief = { readonly mean: Vector; readonly covariance: Matrix };

/**
 * Posterior of a linear model with normal prior and known noise.
 *
 *     Σ⁻¹ = Σ0⁻¹ + Σ w xxᵀ/s²      μ = Σ (Σ0⁻¹ μ0 + Σ w xy/s²)
 *
 * Source: C. M. Bishop, Pattern Recognition and Machine Learning (2006), eqs 3.50 and 3.51 (numbers from memory).
 *
 * @param weights share of each row's information that counts; 1 each by default
 */
export function posteriorOf(prior: Belief, rows: readonly RegressionRow[], weights?: Vector): Belief {
  const priorPrecision = inverse(prior.covariance);
  const precision = priorPrecision.map((row) => [...row]);
  const pull = times(priorPrecision, prior.mean);
  rows.forEach(({ x, y, sd }, r) => {
    const information = (weights?.[r] ?? 1) / sd ** 2;
    x.forEach((xi, i) => {
      pull[i] = pull[i]! + information * xi * y;
      x.forEach((xj, j) => {
        precision[i]![j] = precision[i]![j]! + information * xi * xj;
      });
    });
  });
  const covariance = inverse(precision);
  return { covariance, mean: times(covariance, pull) };
}

/**
 * ln of how well a prior foresaw the rows, up to a number that is the same for every prior.
 *
 *     ln m = ½ ln|Σ| − ½ ln|Σ0| + ½ μᵀΣ⁻¹μ − ½ μ0ᵀΣ0⁻¹μ0
 *
 * Source: Bishop (2006), section 3.4 on model evidence, with the square completed in β.
 */
export function logEvidence(prior: Belief, posterior: Belief): number {
  const occam = logDeterminant(posterior.covariance) - logDeterminant(prior.covariance);
  return (occam + selfWeight(posterior) - selfWeight(prior)) / 2;
}

function selfWeight({ mean, covariance }: Belief): number {
  return dot(mean, times(inverse(covariance), mean));
}
