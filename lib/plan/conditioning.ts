import { cholesky, forward, innerProduct } from './cholesky';
import type { ErrorProcess } from './forecast-error';

/** What was read minus what was forecast, with the sd of the instrument. */
export type MeasuredError = { readonly at: number; readonly value: number; readonly sd: number };

/** The error at rising instants, given all observations. */
export type ErrorTrack = {
  readonly mean: Float64Array;
  readonly sd: Float64Array;
  /** Covariance of each instant with the next; one shorter. */
  readonly toNext: Float64Array;
  /** What one standard deviation of the part that stays all night moves each instant by. The rest of it is Markov. */
  readonly lasting: Float64Array;
};

export type Conditioned = (instants: ArrayLike<number>) => ErrorTrack;

type Point = { readonly mean: number; readonly sd: number; readonly clock: number };

/** k(s, t) = σ(s) σ(t) [c + (1 − c) exp(−|θ(s) − θ(t)|)]. */
function covarianceOf({ lasting }: ErrorProcess): (a: Point, b: Point) => number {
  return (a, b) => a.sd * b.sd * (lasting + (1 - lasting) * Math.exp(-Math.abs(a.clock - b.clock)));
}

/**
 * The error process given readings, exactly: with observations y at t₁..t_n, K = k(tᵢ, tⱼ) + sdᵢ² δᵢⱼ,
 *
 *     mean(t)   = m(t) + k(t)ᵀ K⁻¹ (y − m)
 *     cov(s, t) = k(s, t) − k(s)ᵀ K⁻¹ k(t)
 *
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), eq. 2.23-2.24 and 2.38. The part a that
 * stays is one more variable of the same joint normal law, k(t, a) = σ(t) √c. Given a, the process stays Markov, so the
 * covariance of neighbours and of each instant with a is all that paths need.
 */
export function conditionOn(process: ErrorProcess, observations: readonly MeasuredError[]): Conditioned {
  const pointAt = (at: number): Point => ({
    mean: process.mean(at),
    sd: process.sd(at),
    clock: process.clock(at),
  });
  const covariance = covarianceOf(process);
  const withLasting = ({ sd }: Point) => sd * Math.sqrt(process.lasting);
  const seen = observations.map(({ at }) => pointAt(at));
  const lower = cholesky(
    seen.length,
    (i, j) => covariance(seen[i]!, seen[j]!) + (i === j ? observations[i]!.sd ** 2 : 0),
  );
  const whitened = forward(lower, (i) => observations[i]!.value - seen[i]!.mean);
  const knownLasting = forward(lower, (i) => withLasting(seen[i]!));
  const lastingSd = Math.sqrt(1 - innerProduct(knownLasting, knownLasting));
  return (instants) => {
    const points = Array.from(instants, pointAt);
    const known = points.map((point) => forward(lower, (i) => covariance(point, seen[i]!)));
    const left = (i: number, j: number) =>
      covariance(points[i]!, points[j]!) - innerProduct(known[i]!, known[j]!);
    const count = points.length;
    const track = {
      mean: new Float64Array(count),
      sd: new Float64Array(count),
      toNext: new Float64Array(Math.max(0, count - 1)),
      lasting: new Float64Array(count),
    };
    for (let i = 0; i < count; i++) {
      track.mean[i] = points[i]!.mean + innerProduct(known[i]!, whitened);
      track.sd[i] = Math.sqrt(Math.max(0, left(i, i)));
      track.lasting[i] = (withLasting(points[i]!) - innerProduct(known[i]!, knownLasting)) / lastingSd;
      if (i < count - 1) track.toNext[i] = left(i, i + 1);
    }
    return track;
  };
}
