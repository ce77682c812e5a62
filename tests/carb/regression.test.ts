import { describe, expect, it } from 'vitest';
import { heavyTailed, mixturePosterior, momentsOf } from '@/lib/carb/mixture';
import { logEvidence, posteriorOf, type RegressionRow } from '@/lib/carb/regression';
import { robustFit } from '@/lib/carb/robust-fit';
import { seededRandom } from '../support/seeded-random';

const PRIOR = {
  mean: [0.65, 0.65],
  covariance: [
    [0.0144, 0.01008],
    [0.01008, 0.0144],
  ],
};

/** Rows of a known line with normal noise. */
function rowsOf(truth: readonly [number, number], count: number, seed: number): RegressionRow[] {
  const { uniform, normal } = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const x = [0.4 * (uniform() - 0.5), 0.2 * (uniform() - 0.5)];
    return { x, y: x[0]! * truth[0] + x[1]! * truth[1] + 0.01 * normal(), sd: 0.01 };
  });
}

describe('what evidence does to a belief', () => {
  it('one number, prior 2 ± 1 and a reading 5 ± 0.5, is 4.4 ± √0.2 by hand', () => {
    // Precision 1 + 4 = 5; mean (2 + 4 · 5)/5 = 4.4.
    const { mean, covariance } = posteriorOf({ mean: [2], covariance: [[1]] }, [{ x: [1], y: 5, sd: 0.5 }]);
    expect(mean[0]).toBeCloseTo(4.4, 12);
    expect(covariance[0]![0]).toBeCloseTo(0.2, 12);
  });

  it('two readings that tell a sum and a difference, worked by hand', () => {
    // Prior N(0, I); y1 = a + b = 3, y2 = a − b = 1, sd 1. Precision I + [[2,0],[0,2]] = 3I; mean (4/3, 2/3).
    const prior = {
      mean: [0, 0],
      covariance: [
        [1, 0],
        [0, 1],
      ],
    };
    const { mean, covariance } = posteriorOf(prior, [
      { x: [1, 1], y: 3, sd: 1 },
      { x: [1, -1], y: 1, sd: 1 },
    ]);
    expect(mean[0]).toBeCloseTo(4 / 3, 12);
    expect(mean[1]).toBeCloseTo(2 / 3, 12);
    expect(covariance[0]![0]).toBeCloseTo(1 / 3, 12);
    expect(covariance[0]![1]).toBeCloseTo(0, 12);
  });

  it('nothing seen is nothing learned', () => {
    const { mean, covariance } = posteriorOf(PRIOR, []);
    expect(mean[0]).toBeCloseTo(0.65, 12);
    expect(covariance[0]![1]).toBeCloseTo(0.01008, 12);
  });

  it('taking evidence in two helpings is the same as in one', () => {
    const rows = rowsOf([0.8, 0.6], 12, 3);
    const once = posteriorOf(PRIOR, rows);
    const twice = posteriorOf(posteriorOf(PRIOR, rows.slice(0, 5)), rows.slice(5));
    once.mean.forEach((value, i) => {
      expect(twice.mean[i]).toBeCloseTo(value, 12);
    });
  });

  it('how well two priors foresaw a reading is the ratio of two normal densities', () => {
    // y ~ N(μ0, σ0² + s²): priors 0 ± 1 and 3 ± 1, reading 2 ± 1: ln ratio = −½(2² − 1²)/2 = −0.75.
    const row = [{ x: [1], y: 2, sd: 1 }];
    const evidence = (mean: number) => {
      const prior = { mean: [mean], covariance: [[1]] };
      return logEvidence(prior, posteriorOf(prior, row));
    };
    expect(evidence(0) - evidence(3)).toBeCloseTo(-0.75, 12);
  });
});

describe('a prior that gives way', () => {
  it('has the mean, the spread and the correlation that were stated', () => {
    const whole = momentsOf(heavyTailed(PRIOR));
    whole.covariance.flat().forEach((value, i) => {
      expect(value).toBeCloseTo(PRIOR.covariance.flat()[i]!, 12);
    });
    expect(whole.mean).toEqual([0.65, 0.65]);
  });

  it('holds evidence back less than a normal prior where the two disagree', () => {
    // Truth (0.5, 1.0): the difference is five of the prior's sds.
    const rows = rowsOf([0.5, 1], 40, 7);
    const stiff = posteriorOf(PRIOR, rows).mean;
    const yielding = momentsOf(mixturePosterior(heavyTailed(PRIOR), rows)).mean;
    expect(Math.abs(yielding[1]! - 1)).toBeLessThan(Math.abs(stiff[1]! - 1));
  });

  it('parts keep weights that add up to one, even with overwhelming evidence', () => {
    const parts = mixturePosterior(heavyTailed(PRIOR), rowsOf([0.2, 1.6], 5000, 9));
    expect(parts.reduce((sum, part) => sum + part.weight, 0)).toBeCloseTo(1, 12);
    expect(parts.every((part) => Number.isFinite(part.weight))).toBe(true);
  });
});

describe('one entry that stands apart', () => {
  const good = rowsOf([0.7, 0.8], 24, 11);
  const wild: RegressionRow = { x: [0.15, 0.08], y: 0.4, sd: 0.01 };

  it('is counted less, and the rest in full', () => {
    const { rows } = robustFit(heavyTailed(PRIOR), [...good, wild]);
    expect(rows[24]!.weight).toBeLessThan(0.15);
    expect(rows[24]!.standardised).toBeGreaterThan(10);
    expect(rows.slice(0, 24).filter((row) => row.weight === 1).length).toBeGreaterThanOrEqual(22);
  });

  it('moves the answer by no more than a few honest entries would', () => {
    const without = robustFit(heavyTailed(PRIOR), good).posterior.mean;
    const withIt = robustFit(heavyTailed(PRIOR), [...good, wild]).posterior.mean;
    const naive = posteriorOf(PRIOR, [...good, wild]).mean;
    const moved = (mean: readonly number[]) => Math.hypot(mean[0]! - without[0]!, mean[1]! - without[1]!);
    expect(moved(withIt)).toBeLessThan(0.05);
    expect(moved(naive)).toBeGreaterThan(0.2);
  });

  it('the influence told is what leaving the entry out really does', () => {
    const mixture = [{ weight: 1, belief: PRIOR }];
    const rows = good.slice(0, 8);
    const fit = robustFit(mixture, rows);
    rows.forEach((_, i) => {
      const left = posteriorOf(
        PRIOR,
        rows.filter((_, j) => j !== i),
      );
      expect(fit.rows[i]!.weight).toBe(1);
      fit.rows[i]!.influence.forEach((moved, k) => {
        expect(moved).toBeCloseTo(fit.posterior.mean[k]! - left.mean[k]!, 10);
      });
    });
  });

  it('the distance told is the residual from the others over its own spread', () => {
    const rows = good.slice(0, 8);
    const fit = robustFit([{ weight: 1, belief: PRIOR }], rows);
    const [first, ...others] = rows;
    const left = posteriorOf(PRIOR, others);
    const expected = first!.x.reduce((sum, x, i) => sum + x * left.mean[i]!, 0);
    const spread = first!.x.reduce(
      (sum, xi, i) => sum + first!.x.reduce((inner, xj, j) => inner + xi * xj * left.covariance[i]![j]!, 0),
      0,
    );
    expect(fit.rows[0]!.standardised).toBeCloseTo((first!.y - expected) / Math.sqrt(0.01 ** 2 + spread), 9);
  });
});
