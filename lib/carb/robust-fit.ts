import { type BeliefMixture, mixturePosterior, momentsOf } from './mixture';
import type { Belief, RegressionRow } from './regression';
import { dot, times, type Vector } from './small-matrix';

export type RowDiagnosis = {
  /** Share of the row's information that counted: 1 for an ordinary row, less for one that stands apart. */
  readonly weight: number;
  readonly fitted: number;
  /** Residual from the fit without this row over its own standard deviation. */
  readonly standardised: number;
  /** Posterior mean minus the mean without this row. */
  readonly influence: Vector;
};

export type RobustFit = { readonly posterior: Belief; readonly rows: readonly RowDiagnosis[] };

/** Where a residual stops counting in full, in sds; leaves 99 % of normal noise alone. Judgement. */
const HUBER_LIMIT = 2.5;
const MOST_STEPS = 50;

/**
 * Posterior with rows that stand far apart counted less: each row's information is weighted min(1, 2.5/|z|), z its
 * residual in sds, until the weights settle (iteratively re-weighted least squares).
 *
 * Source: P. J. Huber, Robust estimation of a location parameter, Ann. Math. Stat. 35 (1964) 73.
 */
export function robustFit(prior: BeliefMixture, rows: readonly RegressionRow[]): RobustFit {
  let weights: Vector = rows.map(() => 1);
  let mixture = mixturePosterior(prior, rows, weights);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { mean } = momentsOf(mixture);
    const next = rows.map((row) => huberWeight((row.y - dot(row.x, mean)) / row.sd));
    const moved = next.reduce((most, weight, i) => Math.max(most, Math.abs(weight - weights[i]!)), 0);
    if (moved < 1e-9) break;
    weights = next;
    mixture = mixturePosterior(prior, rows, weights);
  }
  return { posterior: momentsOf(mixture), rows: rows.map((row, i) => diagnose(mixture, row, weights[i]!)) };
}

function huberWeight(z: number): number {
  return Math.abs(z) <= HUBER_LIMIT ? 1 : HUBER_LIMIT / Math.abs(z);
}

/** The parts' diagnoses averaged by their weight, which one row hardly changes. */
function diagnose(mixture: BeliefMixture, row: RegressionRow, weight: number): RowDiagnosis {
  const parts = mixture.map((part) => ({ share: part.weight, ...leaveOut(part.belief, row, weight) }));
  const average = (of: (part: (typeof parts)[number]) => number) =>
    parts.reduce((sum, part) => sum + part.share * of(part), 0);
  return {
    weight,
    fitted: average((part) => part.fitted),
    standardised: average((part) => part.standardised),
    influence: row.x.map((_, i) => average((part) => part.influence[i]!)),
  };
}

/**
 * What leaving one row out would change, without fitting again (Sherman–Morrison).
 *
 *     μ − μ₋ᵢ = Σ x w r/(1 − w h),  h = xᵀΣx,  w = weight/s²,  r = y − x·μ
 */
function leaveOut({ mean, covariance }: Belief, { x, y, sd }: RegressionRow, weight: number) {
  const gain = times(covariance, x);
  const spread = dot(x, gain);
  const information = weight / sd ** 2;
  const left = 1 - information * spread;
  const fitted = dot(x, mean);
  const residual = y - fitted;
  return {
    fitted,
    standardised: residual / left / Math.sqrt(sd ** 2 + spread / left),
    influence: gain.map((g) => (g * information * residual) / left),
  };
}
