/** What repeats say about a difference of two means. */
export type Difference = {
  readonly mean: number;
  readonly variance: number;
  /** Of the variance; infinite where the scatter was assumed rather than seen. */
  readonly degreesOfFreedom: number;
  readonly scatter: 'seen' | 'seen-on-one-side' | 'assumed';
};

/** No dyno and no stopwatch repeats better than this; equal numbers only show rounding. (Common practice, no source.) */
const LEAST_SCATTER = 0.001;

type Sample = { readonly mean: number; readonly count: number; readonly variance: number | null };

function sampleOf(values: readonly number[]): Sample {
  const count = values.length;
  const mean = values.reduce((sum, v) => sum + v, 0) / count;
  if (count < 2) return { mean, count, variance: null };
  const variance = values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (count - 1);
  return { mean, count, variance: Math.max(variance, LEAST_SCATTER ** 2) };
}

/**
 * Difference of two means with the variance and degrees of freedom of Welch.
 *
 *     var = s1²/n1 + s2²/n2,   ν = var² / [(s1²/n1)²/(n1 - 1) + (s2²/n2)²/(n2 - 1)]
 *
 * Source: Welch, Biometrika 34 (1947) 28; Satterthwaite, Biometrics Bulletin 2 (1946) 110. With repeats on one side
 * only, that side's scatter serves both; with none, the assumed one does.
 */
export function differenceOfMeans(
  before: readonly number[],
  after: readonly number[],
  assumedScatter: number,
): Difference {
  const [from, to] = [sampleOf(before), sampleOf(after)];
  const mean = to.mean - from.mean;
  if (from.variance !== null && to.variance !== null) {
    const [a, b] = [from.variance / from.count, to.variance / to.count];
    const degreesOfFreedom = (a + b) ** 2 / (a ** 2 / (from.count - 1) + b ** 2 / (to.count - 1));
    return { mean, variance: a + b, degreesOfFreedom, scatter: 'seen' };
  }
  const perMean = 1 / from.count + 1 / to.count;
  const seen = from.variance ?? to.variance;
  if (seen === null)
    return {
      mean,
      variance: assumedScatter ** 2 * perMean,
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      scatter: 'assumed',
    };
  const degreesOfFreedom = Math.max(from.count, to.count) - 1;
  return { mean, variance: seen * perMean, degreesOfFreedom, scatter: 'seen-on-one-side' };
}
