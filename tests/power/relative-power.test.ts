import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mixtureFactor, relativePower, speedRatio, timeAtPower } from '@/lib/power/relative-power';
import { ratio, second } from '@/lib/units/quantity';
import { airOf, expectWithin, relative, station } from '../support/air';

const baselineAir = airOf(-5, station(985), relative(0.8));
const power = (air = baselineAir, drift = 0, richPowerLoss = 2) =>
  relativePower({ air, baselineAir, drift: ratio(drift), richPowerLoss });

describe('expected power', () => {
  it('is 1 in the baseline air at the baseline mixture', () => {
    expect(power()).toBe(1);
  });

  it('goes with dry pressure', () => {
    // By hand: dry air at the same temperature, 940 for 985 hPa; vapour is the same 3.37 hPa (80 % of 421.8 Pa).
    expectWithin(power(airOf(-5, station(940), relative(0.8))), (940 - 3.374) / (985 - 3.374), 1e-6);
  });

  it('goes with the root of temperature: 15 K colder is 2.9 % more', () => {
    // By hand: sqrt(268.15/253.15) = 1.02920, and 2.4 hPa less vapour in 982: 1.0317.
    expectWithin(power(airOf(-20, station(985), relative(0.8))), 1.0317, 1e-4);
  });

  it('on a 90 °F day against winter air costs 10 to 17 hp of 150 to 200 by this law', () => {
    // Common practice, no source, says 20 to 35 hp; the root law gives the low end, the density law the high one.
    const winter = airOf(-12, station(1013), relative(0.7));
    const summer = airOf(32.2, station(1013), relative(0));
    const left = relativePower({ air: summer, baselineAir: winter, drift: ratio(0), richPowerLoss: 2 });
    expect(150 * (1 - left)).toBeGreaterThan(10);
    expect(200 * (1 - left)).toBeLessThan(17);
    expect(150 * (1 - summer.dryDensity / winter.dryDensity)).toBeGreaterThan(19);
    expect(200 * (1 - summer.dryDensity / winter.dryDensity)).toBeLessThan(33);
  });

  it('loses 2 % at 10 % rich and half a percent at 5 %, by default', () => {
    expect(power(baselineAir, 0.1)).toBeCloseTo(0.98, 12);
    expect(power(baselineAir, 0.05)).toBeCloseTo(0.995, 12);
    expect(power(baselineAir, 0.1, 4)).toBeCloseTo(0.96, 12);
  });

  it('credits lean of the baseline with nothing and charges it nothing', () => {
    for (const drift of [-0.001, -0.02, -0.2]) expect(power(baselineAir, drift)).toBe(1);
  });

  it('never falls below nothing, however rich', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (d, k) => {
          const factor = mixtureFactor(ratio(d), k);
          expect(factor).toBeGreaterThanOrEqual(0);
          expect(factor).toBeLessThanOrEqual(1);
          expect(mixtureFactor(ratio(d + 0.01), k)).toBeLessThanOrEqual(factor);
        },
      ),
      { numRuns: 300, seed: 81 },
    );
  });
});

describe('speed', () => {
  it('goes with the third root of power', () => {
    expect(speedRatio(ratio(1))).toBe(1);
    expect(speedRatio(ratio(1.331))).toBeCloseTo(1.1, 12);
  });

  it('1 % of power is 0.02 s of 6 s', () => {
    // By hand: 6 (0.99^(-1/3) - 1) = 0.020134.
    expect(timeAtPower(second(6), ratio(0.99))).toBeCloseTo(6.020134, 6);
  });

  it('from a standing start at constant power the cube law holds too', () => {
    // Added up here in small steps: energy grows by P dt, distance by v dt, over 200 m with 300 kg.
    const timeOver200m = (watts: number) => {
      const step = 1e-4;
      let [steps, x] = [0, 0];
      while (x < 200) {
        x += Math.sqrt((2 * watts * (steps + 0.5) * step) / 300) * step;
        steps += 1;
      }
      return steps * step;
    };
    const [t100, t90] = [timeOver200m(100_000), timeOver200m(90_000)];
    expectWithin(timeAtPower(second(t100), ratio(0.9)), t90, 1e-4);
  });
});
