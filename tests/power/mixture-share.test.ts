import { describe, expect, it } from 'vitest';
import { mixtureShare } from '@/lib/power/mixture-share';
import { airOf, expectWithin, relative, station } from '../support/air';
import { dynoPulls } from '../support/pulls';
import { seededRandom } from '../support/seeded-random';

const air = airOf(20, station(990), relative(0.4));
const at = (mean: number, sd: number) => dynoPulls([150], air, { mean, sd });
const sureLoss = { mean: 2, sd: 0 };

describe('what mixture makes of the change', () => {
  it('known exactly, is the change of 1 - k drift²', () => {
    // By hand: ln(1 - 2 × 0.0025) - ln(1 - 2 × 0.0144) = -0.0050125 + 0.0292230 = 0.0242105.
    const share = mixtureShare(at(0.12, 0), at(0.05, 0), sureLoss);
    expectWithin(share.mean, 0.0242105, 1e-5);
    expect(share.variance).toBeLessThan(1e-30);
  });

  it('is nothing between two lean mixtures', () => {
    expect(mixtureShare(at(-0.05, 0.001), at(-0.1, 0.001), sureLoss).mean).toBeCloseTo(0, 12);
  });

  it('is turned round when before and after are', () => {
    const loss = { mean: 2, sd: 0.7 };
    const there = mixtureShare(at(0.12, 0.02), at(0.03, 0.01), loss);
    const back = mixtureShare(at(0.03, 0.01), at(0.12, 0.02), loss);
    expect(back.mean).toBeCloseTo(-there.mean, 12);
    expect(back.variance).toBeCloseTo(there.variance, 12);
  });

  it('is as uncertain as 400,000 plain draws say, at the kink too', () => {
    // Plain Monte Carlo with its own sampling error: 1 % of the standard deviation.
    const random = seededRandom(96);
    for (const [d0, s0, d1, s1] of [
      [0.12, 0.02, 0.03, 0.02],
      [0.01, 0.02, 0, 0.01],
    ] as const) {
      const draws = Array.from({ length: 400_000 }, () => {
        const k = Math.max(0, 2 + 0.7 * random.normal());
        const factor = (mean: number, sd: number) => 1 - k * Math.max(0, mean + sd * random.normal()) ** 2;
        return Math.log(factor(d1, s1)) - Math.log(factor(d0, s0));
      });
      const mean = draws.reduce((sum, x) => sum + x, 0) / draws.length;
      const sd = Math.sqrt(draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / draws.length);
      const share = mixtureShare(at(d0, s0), at(d1, s1), { mean: 2, sd: 0.7 });
      expect(Math.abs(share.mean - mean)).toBeLessThan(0.01 * sd);
      expectWithin(Math.sqrt(share.variance), sd, 0.02);
    }
  });
});
