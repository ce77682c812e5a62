import type { Belief, RegressionRow } from './regression';
import { inverse, type Matrix, type Vector } from './small-matrix';

/** Whether the evidence itself spoke on an exponent, or only what was believed before. */
export type Information = {
  /**
   * `learned`: the evidence alone tells more than the prior. `near-prior`: it does not; `why` says what is missing.
   */
  readonly state: 'learned' | 'near-prior';
  /**
   * `no-evidence`: nothing was given. `one-kind-of-weather`: the evidence hardly differs in this from itself and the
   * baseline. `moves-together`: pressure and temperature always changed together, so they cannot be told apart.
   * null where learned.
   */
  readonly why: 'no-evidence' | 'one-kind-of-weather' | 'moves-together' | null;
  /** True where a near-prior exponent moved all the same, by more than half its sd, because the two usually go together. */
  readonly borrowed: boolean;
  /** Posterior sd over prior sd: 1 learned nothing. */
  readonly sdLeft: number;
};

/**
 * What the rows say on the first two coefficients by themselves, prior exponents aside.
 *
 * The information on one exponent is the Schur complement of the rows' precision (with the prior of the levels, since
 * a proven baseline is evidence) after all other unknowns are eliminated; it counts as learned where the sd that it
 * alone would give is below the prior's.
 */
export function informationOn(
  prior: Belief,
  posterior: Belief,
  rows: readonly RegressionRow[],
  weights: Vector,
): { readonly pressure: Information; readonly temperature: Information } {
  const evidence = evidencePrecision(prior, rows, weights);
  const on = (i: 0 | 1): Information => {
    const other = i === 0 ? 1 : 0;
    const priorSd = Math.sqrt(prior.covariance[i]![i]!);
    const needed = 1 / priorSd ** 2;
    const learned = informationLeft(evidence, i, []) >= needed;
    // With the other exponent known exactly: if even that is too little, the weather did not vary.
    const atBest = informationLeft(evidence, i, [other]) >= needed;
    const moved = Math.abs(posterior.mean[i]! - prior.mean[i]!) / priorSd;
    const missing = rows.length === 0 ? 'no-evidence' : atBest ? 'moves-together' : 'one-kind-of-weather';
    return {
      state: learned ? 'learned' : 'near-prior',
      why: learned ? null : missing,
      borrowed: !learned && moved > 0.5,
      sdLeft: Math.sqrt(posterior.covariance[i]![i]!) / priorSd,
    };
  };
  return { pressure: on(0), temperature: on(1) };
}

/** Precision of the rows, with the levels' prior and a trace of the exponents' so that it can always be inverted. */
function evidencePrecision(prior: Belief, rows: readonly RegressionRow[], weights: Vector): Matrix {
  const trace = 1e-6;
  return prior.mean.map((_, i) =>
    prior.mean.map((_, j) => {
      const ofPrior = i === j ? (i < 2 ? trace : 1) / prior.covariance[i]![i]! : 0;
      return rows.reduce((sum, { x, sd }, r) => sum + (weights[r]! * x[i]! * x[j]!) / sd ** 2, ofPrior);
    }),
  );
}

/** Information on coefficient i once all others but the `known` ones have been eliminated. */
function informationLeft(precision: Matrix, i: number, known: readonly number[]): number {
  const keep = precision.map((_, k) => k).filter((k) => !known.includes(k));
  const reduced = keep.map((row) => keep.map((column) => precision[row]![column]!));
  const at = keep.indexOf(i);
  return 1 / inverse(reduced)[at]![at]!;
}
