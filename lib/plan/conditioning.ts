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
  /** Share of each instant's sd that observations have left: 1 with none. */
  readonly left: Float64Array;
};

export type Conditioned = (instants: ArrayLike<number>) => ErrorTrack;

/** σ(s) σ(t) [c + (1 − c) exp(−|θ(s) − θ(t)|)], from the two sds and how far apart the clocks are. */
function covarianceOver(lasting: number, sds: number, apart: number): number {
  return sds * (lasting + (1 - lasting) * Math.exp(-Math.abs(apart)));
}

/** The observations in the form in which the error is conditioned on them: L of K = L Lᵀ, and L⁻¹ (y − m). */
function heard(process: ErrorProcess, observations: readonly MeasuredError[]) {
  const seen = observations.map(({ at }) => ({ sd: process.sd(at), clock: process.clock(at) }));
  const withSeen = (sd: number, clock: number, i: number) =>
    covarianceOver(process.lasting, sd * seen[i]!.sd, clock - seen[i]!.clock);
  const lower = cholesky(
    seen.length,
    (i, j) => withSeen(seen[i]!.sd, seen[i]!.clock, j) + (i === j ? observations[i]!.sd ** 2 : 0),
  );
  return {
    lower,
    whitened: forward(lower, (i) => observations[i]!.value - process.mean(observations[i]!.at)),
    knownLasting: forward(lower, (i) => seen[i]!.sd * Math.sqrt(process.lasting)),
    /** L⁻¹ k(t) of an instant with this sd and clock. */
    knownAt: (sd: number, clock: number) => forward(lower, (i) => withSeen(sd, clock, i)),
  };
}

/** Only the mean of what `conditionOn` gives. */
export function expectedError(
  process: ErrorProcess,
  observations: readonly MeasuredError[],
): (instants: Float64Array) => Float64Array {
  const { whitened, knownAt } = heard(process, observations);
  return (instants) =>
    instants.map(
      (at) => process.mean(at) + innerProduct(knownAt(process.sd(at), process.clock(at)), whitened),
    );
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
  const { whitened, knownLasting, knownAt } = heard(process, observations);
  const { lasting } = process;
  const lastingRoot = Math.sqrt(lasting);
  const lastingSd = Math.sqrt(1 - innerProduct(knownLasting, knownLasting));
  return (instants) => {
    const count = instants.length;
    const track = {
      mean: new Float64Array(count),
      sd: new Float64Array(count),
      toNext: new Float64Array(Math.max(0, count - 1)),
      lasting: new Float64Array(count),
      left: new Float64Array(count),
    };
    let sdBefore = 0;
    let clockBefore = 0;
    let knownBefore = knownLasting;
    for (let i = 0; i < count; i++) {
      const at = instants[i]!;
      const sd = process.sd(at);
      const clock = process.clock(at);
      const known = knownAt(sd, clock);
      track.mean[i] = process.mean(at) + innerProduct(known, whitened);
      const variance = covarianceOver(lasting, sd * sd, 0) - innerProduct(known, known);
      track.sd[i] = Math.sqrt(Math.max(0, variance));
      track.left[i] = track.sd[i]! / sd;
      track.lasting[i] = (sd * lastingRoot - innerProduct(known, knownLasting)) / lastingSd;
      if (i > 0)
        track.toNext[i - 1] =
          covarianceOver(lasting, sdBefore * sd, clockBefore - clock) - innerProduct(knownBefore, known);
      sdBefore = sd;
      clockBefore = clock;
      knownBefore = known;
    }
    return track;
  };
}
