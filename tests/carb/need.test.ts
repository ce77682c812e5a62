import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logNeed } from '@/lib/carb/need';
import { density, ratio } from '@/lib/units/quantity';
import { airOf } from '../support/race-machine';

const metered = (all: number, dry = all) => ({ density: density(all), dryDensity: density(dry) });

describe('the need for fuel', () => {
  it("is nothing in the baseline's own air", () => {
    expect(logNeed(airOf(-7, 985, 0.6), airOf(-7, 985, 0.6))).toBe(0);
  });

  it('in dry air is the square root of density', () => {
    expect(Math.exp(logNeed(metered(1.44), metered(1.21)))).toBeCloseTo(1.2 / 1.1, 12);
  });

  it('humid air asks for less: its oxygen falls by all of the vapour, its pull by a little', () => {
    // By hand: dry part 2 % lower, whole density 1 % lower: 0.98/√0.99.
    expect(Math.exp(logNeed(metered(1.188, 1.176), metered(1.2)))).toBeCloseTo(0.98 / Math.sqrt(0.99), 12);
  });

  it('denser fuel brings more of itself through the same jet', () => {
    expect(Math.exp(logNeed(metered(1.2), metered(1.2), ratio(1.0201)))).toBeCloseTo(1 / 1.01, 12);
  });

  it('there and back again is nothing', () => {
    const celsius = fc.double({ min: -45, max: 45, noNaN: true });
    const hectopascal = fc.double({ min: 600, max: 1060, noNaN: true });
    fc.assert(
      fc.property(celsius, hectopascal, celsius, hectopascal, (t1, p1, t2, p2) => {
        const a = airOf(t1, p1, 0.5);
        const b = airOf(t2, p2, 0.9);
        expect(logNeed(a, b) + logNeed(b, a)).toBeCloseTo(0, 12);
      }),
    );
  });

  it('colder or heavier air never asks for less', () => {
    const celsius = fc.double({ min: -45, max: 40, noNaN: true });
    const hectopascal = fc.double({ min: 600, max: 1050, noNaN: true });
    const step = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(celsius, hectopascal, step, (t, p, more) => {
        const here = airOf(t, p, 0.5);
        expect(logNeed(airOf(t - more, p, 0.5), here)).toBeGreaterThan(0);
        expect(logNeed(airOf(t, p + more, 0.5), here)).toBeGreaterThan(0);
      }),
    );
  });
});
