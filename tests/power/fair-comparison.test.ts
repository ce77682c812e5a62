import { describe, expect, it } from 'vitest';
import {
  DEFAULT_FAIR_OPTIONS,
  type FairComparison,
  fairComparison,
  type Share,
} from '@/lib/power/fair-comparison';
import type { Pull } from '@/lib/power/pull';
import { expectOk } from '@/lib/result/result';
import { wattToHorsepower } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { airOf, expectWithin, relative, standard, station } from '../support/air';
import { dynoPulls, timedRuns } from '../support/pulls';
import { seededRandom } from '../support/seeded-random';

const evening = airOf(20, station(990), relative(0.4));
const compare = (
  before: readonly Pull[],
  after: readonly Pull[],
  options = DEFAULT_FAIR_OPTIONS,
): FairComparison => expectOk(fairComparison(before, after, options));
const hp = (share: Share) => wattToHorsepower(share.power!.change);
const codes = (comparison: FairComparison) => comparison.caveats.map(({ code }) => code);

describe('pulls in different air, by hand with SAE J1349 AUG2004', () => {
  // Before in the reference air: 25 °C, 99 kPa dry: factor 1. After at 15 °C and 102 kPa dry: 99/102 = 0.970588,
  // sqrt(288.15/298.15) = 0.983087, product 0.954172; factor 0.954172/0.85 - 0.15/0.85 = 0.946085.
  const comparison = compare(
    dynoPulls([100], airOf(25, station(990), relative(0))),
    dynoPulls([108], airOf(15, station(1020), relative(0))),
  );

  it('108 hp in that air are 102.18 hp in the reference air', () => {
    expectWithin(wattToHorsepower(comparison.corrected!.before), 100, 1e-3);
    expectWithin(
      wattToHorsepower(comparison.corrected!.after) / wattToHorsepower(comparison.corrected!.before),
      1.02177,
      1e-5,
    );
  });

  it('8 hp more are 5.76 from the air and 2.24 from the part', () => {
    // ln 1.08 = 0.076961 = 0.055423 + 0.021538, spread over the 8 hp: 0.08/0.076961 = 1.039487 each.
    expect(hp(comparison.total)).toBeCloseTo(8, 9);
    expect(hp(comparison.air)).toBeCloseTo(5.761, 3);
    expect(hp(comparison.part)).toBeCloseTo(2.239, 3);
    expect(hp(comparison.mixture)).toBeCloseTo(0, 9);
  });

  it('says that one pull a side shows no scatter', () => {
    expect(codes(comparison)).toContain('scatter-assumed');
    // 1 % a pull, two pulls, 90 %: 1.645 × 1.414 % = 2.3 %, more than the part's 2.2 %.
    expect(comparison.verdict).toBe('explained-by-air');
  });
});

describe('an engine five sizes rich that loses its airbox', () => {
  // 460 where 410 is right: 12.2 % rich. The open intake leans it by some 7 %, to 5 % rich. Nothing else changes, so
  // by 1 - 2 drift² it makes 145.5 hp of its 150 before and 149.25 after: a gain of 3.7 hp.
  const before = dynoPulls([145.2, 145.9, 145.5], evening, { mean: 460 / 410 - 1, sd: 0.015 });
  const after = dynoPulls([149.6, 148.8, 149.4], evening, { mean: 0.05, sd: 0.015 });
  const comparison = compare(before, after);

  it('gains power on the dyno', () => {
    expect(hp(comparison.total)).toBeGreaterThan(3);
    expect(comparison.total.low).toBeGreaterThan(0);
  });

  it('is explained by having been rich: the part may have done nothing', () => {
    expect(comparison.verdict).toBe('explained-by-mixture');
    expect(comparison.part.low).toBeLessThan(0);
    expect(comparison.part.high).toBeGreaterThan(0);
    expect(comparison.mixture.change / comparison.total.change).toBeGreaterThan(0.8);
  });

  it('would be taken for a good part by anyone who ignored the mixture', () => {
    const blind = (pulls: readonly Pull[]) =>
      pulls.map((pull) => ({ ...pull, drift: { mean: ratio(0), sd: ratio(0) } }));
    expect(compare(blind(before), blind(after)).verdict).toBe('part-gains');
  });

  it('is explained in nearly every simulated afternoon', () => {
    const random = seededRandom(91);
    const scatter = (horsepower: number) => [0, 1, 2].map(() => horsepower * (1 + 0.005 * random.normal()));
    let explained = 0;
    for (let i = 0; i < 300; i++) {
      const rich = dynoPulls(scatter(150 * (1 - 2 * 0.122 ** 2)), evening, { mean: 0.122, sd: 0.015 });
      const leaner = dynoPulls(scatter(150 * (1 - 2 * 0.05 ** 2)), evening, { mean: 0.05, sd: 0.015 });
      const { verdict } = compare(rich, leaner);
      expect(['explained-by-mixture', 'no-difference-shown', 'part-gains', 'unclear']).toContain(verdict);
      if (verdict === 'explained-by-mixture') explained += 1;
    }
    expect(explained / 300).toBeGreaterThan(0.95);
  });
});

describe('an honest part worth 2 hp', () => {
  const warm = airOf(19, station(992), relative(0.45));

  it('is found on three repeats each, and its interval holds the 2 hp', () => {
    // 150 hp engine, half a percent of scatter, the second half of the day a degree cooler; numbers drawn once.
    const comparison = compare(
      dynoPulls([149.5, 150.6, 150.1], evening),
      dynoPulls([152.9, 151.9, 152.6], warm),
    );
    expect(comparison.verdict).toBe('part-gains');
    expect(wattToHorsepower(comparison.part.power!.low)).toBeLessThan(2);
    expect(wattToHorsepower(comparison.part.power!.high)).toBeGreaterThan(2);
    expect(wattToHorsepower(comparison.part.power!.low)).toBeGreaterThan(0);
  });

  it('is held by 90 % of intervals in 2,000 simulated days, and found in most', () => {
    const random = seededRandom(92);
    const factor = compare(dynoPulls([100], evening), dynoPulls([100], warm)).air;
    let [held, found] = [0, 0];
    for (let i = 0; i < 2000; i++) {
      const pulls = (horsepower: number) => [0, 1, 2].map(() => horsepower * (1 + 0.005 * random.normal()));
      const { part, verdict } = compare(
        dynoPulls(pulls(150), evening),
        dynoPulls(pulls(152 * (1 + factor.change)), warm),
      );
      const low = Math.log1p(2 / 150);
      if (Math.log1p(part.low) <= low && Math.log1p(part.high) >= low) held += 1;
      if (verdict === 'part-gains') found += 1;
    }
    // Welch's interval is a little wide for three against three; 2,000 days have a sampling error of 0.7 points.
    expect(held / 2000).toBeGreaterThan(0.88);
    expect(held / 2000).toBeLessThan(0.95);
    expect(found / 2000).toBeGreaterThan(0.8);
  });

  it('that does nothing is called a gain in no more than 5 % of days', () => {
    const random = seededRandom(93);
    let gains = 0;
    for (let i = 0; i < 2000; i++) {
      const pulls = () => [0, 1, 2].map(() => 150 * (1 + 0.005 * random.normal()));
      if (compare(dynoPulls(pulls(), evening), dynoPulls(pulls(), evening)).verdict === 'part-gains')
        gains += 1;
    }
    // 90 % two-sided leaves 5 % on each side; 0.5 points of sampling error.
    expect(gains / 2000).toBeLessThan(0.06);
  });
});

describe('what is not known', () => {
  it('about drift and k is in the interval: with both drawn at random, 90 % of intervals hold the truth', () => {
    const random = seededRandom(94);
    let held = 0;
    for (let i = 0; i < 1000; i++) {
      const k = 2 + 0.7 * random.normal();
      const [d0, d1] = [0.1 + 0.02 * random.normal(), 0.03 + 0.02 * random.normal()];
      const factor = (d: number) => 1 - k * Math.max(0, d) ** 2;
      const pulls = (horsepower: number) => [0, 1, 2].map(() => horsepower * (1 + 0.004 * random.normal()));
      const { part, total } = compare(
        dynoPulls(pulls(150 * factor(d0)), evening, { mean: 0.1, sd: 0.02 }),
        dynoPulls(pulls(151.5 * factor(d1)), evening, { mean: 0.03, sd: 0.02 }),
      );
      const perLog = total.change / Math.log1p(total.change);
      const truth = Math.log(1.01) * perLog;
      if (part.low <= truth && part.high >= truth) held += 1;
    }
    expect(held / 1000).toBeGreaterThan(0.87);
    expect(held / 1000).toBeLessThan(0.95);
  });

  it('about drift widens the interval', () => {
    const sure = compare(
      dynoPulls([145, 146, 145], evening, { mean: 0.1, sd: 0.002 }),
      dynoPulls([149, 150, 149], evening),
    );
    const unsure = compare(
      dynoPulls([145, 146, 145], evening, { mean: 0.1, sd: 0.03 }),
      dynoPulls([149, 150, 149], evening),
    );
    expect(unsure.part.high - unsure.part.low).toBeGreaterThan(1.5 * (sure.part.high - sure.part.low));
  });

  it('about the air law is what the standards differ by', () => {
    const far = compare(
      dynoPulls([150, 150.5, 149.5], airOf(30, station(900), relative(0.6))),
      dynoPulls([190, 190.5, 189.5], airOf(-10, station(1000), relative(0.6))),
    );
    const near = compare(dynoPulls([150, 150.5, 149.5], evening), dynoPulls([150, 150.5, 149.5], evening));
    expect(near.air.high - near.air.low).toBe(0);
    expect(far.air.high - far.air.low).toBeGreaterThan(0.01);
    expect(far.verdict).toBe('explained-by-air');
  });
});

describe('shares', () => {
  it('add up to the total, in share and in watts', () => {
    const random = seededRandom(95);
    for (let i = 0; i < 100; i++) {
      const { total, air, mixture, part } = compare(
        dynoPulls(
          [140 + 20 * random.uniform(), 150],
          airOf(30 * random.uniform(), station(950), relative(0.5)),
          {
            mean: 0.1 * random.uniform(),
            sd: 0.02,
          },
        ),
        dynoPulls([140 + 20 * random.uniform()], airOf(-20 * random.uniform(), station(990), relative(0.5))),
      );
      expect(air.change + mixture.change + part.change).toBeCloseTo(total.change, 12);
      expect(hp(air) + hp(mixture) + hp(part)).toBeCloseTo(hp(total), 9);
    }
  });

  it('are the same whatever the unit of time or distance', () => {
    const a = compare(timedRuns([6.1, 6.12], evening), timedRuns([6.05, 6.04], evening));
    const b = compare(timedRuns([61, 61.2], evening, null), timedRuns([60.5, 60.4], evening, null));
    expect(a.part.change).toBeCloseTo(b.part.change, 12);
  });
});

describe('runs against the clock', () => {
  it('take power as the third power of speed: 1 % quicker is 3.06 % of power', () => {
    // By hand: (6.00/5.94)³ = 1.03061.
    const comparison = compare(timedRuns([6, 6.01, 5.99], evening), timedRuns([5.94, 5.95, 5.93], evening));
    expect(comparison.total.change).toBeCloseTo(0.0306, 3);
    expect(comparison.total.power).toBeNull();
    expect(comparison.corrected).toBeNull();
  });

  it('warn that thicker air holds back too', () => {
    const cold = airOf(-15, station(1000), relative(0.5));
    expect(codes(compare(timedRuns([6, 6.01], evening), timedRuns([5.94, 5.95], cold)))).toContain(
      'drag-not-corrected',
    );
    expect(codes(compare(dynoPulls([150, 151], evening), dynoPulls([160, 161], cold)))).not.toContain(
      'drag-not-corrected',
    );
  });
});

describe('verdicts', () => {
  it.each([
    ['part-costs', [150, 150.4, 149.8], [145, 145.3, 144.8]],
    ['no-difference-shown', [150, 151.5, 149], [150.5, 149.5, 151]],
    ['part-gains', [150, 150.4, 149.8], [155, 155.3, 154.8]],
  ] as const)('%s', (verdict, before, after) => {
    expect(compare(dynoPulls(before, evening), dynoPulls(after, evening)).verdict).toBe(verdict);
  });

  it('unclear: a change beyond scatter that mixture may or may not have made', () => {
    const comparison = compare(
      dynoPulls([145, 145.4, 144.8], evening, { mean: 0.06, sd: 0.06 }),
      dynoPulls([149, 149.3, 148.8], evening, { mean: 0.02, sd: 0.03 }),
      { ...DEFAULT_FAIR_OPTIONS, richPowerLoss: { mean: 2, sd: 0.7 } },
    );
    expect(comparison.mixture.change / comparison.total.change).toBeLessThan(0.5);
    expect(comparison.verdict).toBe('unclear');
  });
});

describe('cautions', () => {
  it('say when a side ran leaner than the baseline, for a gain there may be nobody`s', () => {
    const lean = compare(
      dynoPulls([150, 151], evening),
      dynoPulls([152, 153], evening, { mean: -0.04, sd: 0.01 }),
    );
    expect(lean.caveats).toContainEqual({
      code: 'leaner-than-baseline',
      side: 'after',
      drift: expect.closeTo(-0.04, 9),
    });
    expect(lean.mixture.change).toBeCloseTo(0, 3);
  });

  it('pass on once a side what the standard says of the air', () => {
    const guessed = airOf(5, standard(300), relative(0.4));
    const { caveats } = compare(dynoPulls([150, 151, 152], guessed), dynoPulls([150, 151], evening));
    const said = caveats.filter(({ code }) => code === 'correction');
    expect(
      said.map((caveat) => (caveat.code === 'correction' ? `${caveat.side} ${caveat.caveat.code}` : '')),
    ).toEqual(['before temperature-outside-range', 'before pressure-estimated']);
  });

  it('say that scatter was borrowed from the side with repeats', () => {
    expect(codes(compare(dynoPulls([150, 151, 150.5], evening), dynoPulls([153], evening)))).toEqual([
      'scatter-from-one-side',
    ]);
  });
});

describe('pulls that cannot be compared', () => {
  it('are refused with the reason', () => {
    const some = dynoPulls([150], evening);
    expect(fairComparison([], some)).toEqual({ ok: false, reason: { code: 'no-pulls', side: 'before' } });
    expect(fairComparison(some, [])).toEqual({ ok: false, reason: { code: 'no-pulls', side: 'after' } });
    expect(fairComparison(some, dynoPulls([150, 0], evening))).toEqual({
      ok: false,
      reason: { code: 'not-above-zero', side: 'after', index: 1 },
    });
    expect(fairComparison(some, timedRuns([6], evening))).toEqual({
      ok: false,
      reason: { code: 'mixed-measures' },
    });
    expect(fairComparison(timedRuns([6], evening, 200), timedRuns([9], evening, 300))).toEqual({
      ok: false,
      reason: { code: 'different-distances' },
    });
  });
});
