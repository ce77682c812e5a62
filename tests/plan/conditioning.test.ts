import { describe, expect, it } from 'vitest';
import { conditionOn } from '@/lib/plan/conditioning';
import type { ErrorProcess } from '@/lib/plan/forecast-error';

/** Sd 2 until 1, growing after; a clock on which one unit forgets half. */
const PROCESS: ErrorProcess = {
  mean: () => 0,
  sd: (t) => (t <= 1 ? 2 : 2 + 0.5 * (t - 1)),
  clock: (t) => t * Math.LN2,
  lasting: 0,
};

/** The same, with three quarters of it staying all night, and a degree colder than the hours say. */
const LASTING: ErrorProcess = { ...PROCESS, mean: () => -1, sd: () => 2, lasting: 0.75 };

describe('An error after readings', () => {
  it('is the posterior worked by hand for two readings', () => {
    // Readings of 3 at t = 0 and 1 at t = 1, each with sd 1. Prior variance 4 at both, covariance 4/2 = 2, so
    // K = [[5, 2], [2, 5]], det 21, K⁻¹ y = [(15 - 2)/21, (5 - 6)/21] = [13/21, -1/21].
    const after = conditionOn(PROCESS, [
      { at: 0, value: 3, sd: 1 },
      { at: 1, value: 1, sd: 1 },
    ]);
    // t = 2: sd 2.5, k = 2 * 2.5 * [1/4, 1/2] = [1.25, 2.5]: mean (1.25 * 13 - 2.5)/21 = 13.75/21,
    // variance 6.25 - (5 * 1.25² - 2 * 2 * 1.25 * 2.5 + 5 * 2.5²)/21 = 6.25 - 26.5625/21.
    // t = 0.5: k = 4 [2^-½, 2^-½]: mean 4 * 2^-½ * 12/21, variance 4 - 8 * (5 - 4 + 5)/21 = 4 - 48/21.
    const { mean, sd, toNext } = after([0.5, 2]);
    expect(mean[0]).toBeCloseTo((4 * Math.SQRT1_2 * 12) / 21, 12);
    expect(mean[1]).toBeCloseTo(13.75 / 21, 12);
    expect(sd[0]! ** 2).toBeCloseTo(4 - 48 / 21, 12);
    expect(sd[1]! ** 2).toBeCloseTo(6.25 - 26.5625 / 21, 12);
    // Covariance of the two: 2 * 2.5 * 2^-1.5 - k(0.5)ᵀ K⁻¹ k(2), the latter 4 * 2^-½ [1, 1] K⁻¹ [1.25, 2.5]
    // = 4 * 2^-½ * 3 * 3.75/21.
    expect(toNext[0]).toBeCloseTo(5 * 2 ** -1.5 - (4 * Math.SQRT1_2 * 11.25) / 21, 12);
  });

  it('is the stated process where nothing was read', () => {
    const { mean, sd, toNext } = conditionOn(PROCESS, [])([0, 1, 3]);
    expect([...mean]).toEqual([0, 0, 0]);
    expect([...sd]).toEqual([2, 2, 3]);
    expect(toNext[1]).toBeCloseTo(2 * 3 * 0.25, 12);
  });

  it('does not care in which order readings come, nor whether two equal ones or one twice as good is told', () => {
    const [a, b] = [
      { at: 0, value: 3, sd: 1 },
      { at: 1.3, value: -0.4, sd: 0.5 },
    ];
    const there = conditionOn(PROCESS, [a, b])([0.2, 4]);
    const back = conditionOn(PROCESS, [b, a])([0.2, 4]);
    for (const i of [0, 1]) {
      expect(back.mean[i]).toBeCloseTo(there.mean[i]!, 12);
      expect(back.sd[i]).toBeCloseTo(there.sd[i]!, 12);
    }
    const twice = conditionOn(PROCESS, [a, a])([2]);
    const better = conditionOn(PROCESS, [{ ...a, sd: Math.SQRT1_2 }])([2]);
    expect(twice.mean[0]).toBeCloseTo(better.mean[0]!, 12);
    expect(twice.sd[0]).toBeCloseTo(better.sd[0]!, 12);
  });

  it('is corrected less and less, and as unsure as before in the end', () => {
    const after = conditionOn(PROCESS, [{ at: 0, value: 3, sd: 1 }])([0, 1, 2, 4, 8, 40]);
    const weights = after.mean.map((mean, i) => mean / PROCESS.sd([0, 1, 2, 4, 8, 40][i]!));
    for (let i = 1; i < 6; i++) expect(weights[i]).toBeLessThan(weights[i - 1]!);
    expect(after.sd[5]).toBeCloseTo(PROCESS.sd(40), 9);
    expect(after.sd[0]).toBeCloseTo(Math.sqrt(4 - 16 / 5), 12);
  });

  it('takes what stays all night from what wanders, worked by hand for one reading', () => {
    // A reading of 3 at t = 0 with sd 1 on a mean of -1: y = 4, K = 4 + 1. At t = 2: k = 4 (0.75 + 0.25/4) = 3.25, so
    // mean -1 + 3.25 * 4/5, variance 4 - 3.25²/5. At t = 0 and 2 with a: 2 √0.75 each, a variance of 1 - 3/5.
    const { mean, sd, toNext, lasting } = conditionOn(LASTING, [{ at: 0, value: 3, sd: 1 }])([0, 2]);
    expect(mean[0]).toBeCloseTo(-1 + (4 * 4) / 5, 12);
    expect(mean[1]).toBeCloseTo(-1 + (3.25 * 4) / 5, 12);
    expect(sd[1]! ** 2).toBeCloseTo(4 - 3.25 ** 2 / 5, 12);
    expect(toNext[0]).toBeCloseTo(3.25 - (4 * 3.25) / 5, 12);
    const a = 2 * Math.sqrt(0.75);
    expect(lasting[0]).toBeCloseTo((a - (4 * a) / 5) / Math.sqrt(0.4), 12);
    expect(lasting[1]).toBeCloseTo((a - (3.25 * a) / 5) / Math.sqrt(0.4), 12);
  });

  it('leaves a Markov law once what stays is known, after any readings', () => {
    const seen = [0, 0.7, 2.5].map((at, i) => ({ at, value: i - 1, sd: 0.5 }));
    const track = conditionOn(LASTING, seen)([1, 2, 4]);
    const far = conditionOn(LASTING, seen)([1, 4]);
    const rest = (i: number, j: number, covariance: number) =>
      covariance - track.lasting[i]! * track.lasting[j]!;
    const middle = rest(1, 1, track.sd[1]! ** 2);
    const through = (rest(0, 1, track.toNext[0]!) * rest(1, 2, track.toNext[1]!)) / middle;
    // A Markov law: what the ends share, they share through the middle; the reading at 2.5 lies beyond it.
    expect(rest(0, 2, far.toNext[0]!)).toBeCloseTo(through, 12);
  });

  it('of what stays, is no surer after a day than that reading made it', () => {
    const after = conditionOn(LASTING, [{ at: 0, value: 3, sd: 0.1 }])([100]);
    expect(after.sd[0]! ** 2).toBeCloseTo(4 - 3 ** 2 / 4.01, 9);
  });
});
