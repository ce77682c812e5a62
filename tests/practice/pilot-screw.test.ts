import { describe, expect, it } from 'vitest';
import { hangingIdleSteps } from '@/lib/carb/hanging-idle';
import type { Pilot } from '@/lib/carb/machine';
import { logNeed } from '@/lib/carb/need';
import { pilotFor } from '@/lib/carb/pilot';
import { ratio } from '@/lib/units/quantity';
import { airOfFahrenheit } from '../support/race-machine';

// Common practice, no source: a fuel screw 3/4 to 1 turn out in spring, with range to about 2 1/4.
const spring = airOfFahrenheit(30);
const screwAt = (turns: number): Pilot => ({
  jet: 45,
  jets: [42.5, 45, 47.5, 50],
  screw: 'fuel',
  turns,
  leastTurns: 0.5,
  mostTurns: 2.25,
  turnsPerSize: 1.25,
  richerPerSize: ratio(0.06),
});

describe('the fuel screw through the seasons', () => {
  it('the range above one turn out is worth about one pilot size', () => {
    // Common practice, no source.
    const advice = pilotFor(screwAt(1), Math.log(1.06));
    expect(advice).toMatchObject({ act: 'turn', jet: 45 });
    expect(advice.turns).toBeCloseTo(2.25, 12);
    expect(pilotFor(screwAt(1), Math.log(1.0601))).toMatchObject({ act: 'change-jet', jet: 47.5 });
  });

  it('need rises 3.2 % from 30 °F to 0 °F and 6.8 % to -30 °F', () => {
    // Common practice, no source; the numbers are the orifice law on √T: √(272.0/255.4) and √(272.0/238.7), in which
    // compressibility moves the second by 0.03 %.
    expect(Math.abs(Math.expm1(logNeed(airOfFahrenheit(0), spring)) - 0.032)).toBeLessThan(5e-4);
    expect(Math.abs(Math.expm1(logNeed(airOfFahrenheit(-30), spring)) - 0.068)).toBeLessThan(5e-4);
  });

  it.each([0.75, 1])('in at 30 °F with %d turns, out a little at 0 °F on the same pilot', (turns) => {
    // Common practice, no source.
    const midwinter = pilotFor(screwAt(turns), logNeed(airOfFahrenheit(0), spring));
    expect(midwinter).toMatchObject({ act: 'turn', jet: 45 });
    expect(midwinter.turns - turns).toBeGreaterThan(0.5);
    expect(midwinter.turns - turns).toBeLessThan(0.85);
  });

  it('and perhaps the next pilot at -30 °F: from one turn yes, from three quarters the screw just reaches', () => {
    // Common practice, no source.
    const need = logNeed(airOfFahrenheit(-30), spring);
    expect(pilotFor(screwAt(1), need)).toMatchObject({ act: 'change-jet', jet: 47.5 });
    const last = pilotFor(screwAt(0.75), need);
    expect(last).toMatchObject({ act: 'turn', jet: 45 });
    expect(last.turns).toBeGreaterThan(2);
  });
});

describe('an idle that hangs high after a hard run', () => {
  it('look for a leak first, then lower the idle, then the screw, a bigger pilot last', () => {
    // Common practice, no source.
    expect(hangingIdleSteps(screwAt(1))).toEqual([
      { act: 'find-leak' },
      { act: 'lower-idle' },
      { act: 'richer-by-screw', way: 'out', turnsLeft: 1.25 },
      { act: 'bigger-pilot', jet: 47.5 },
    ]);
  });

  it('an air screw is richer turned in', () => {
    // Common practice, no source.
    const [, , screw] = hangingIdleSteps({ ...screwAt(1.5), screw: 'air' });
    expect(screw).toEqual({ act: 'richer-by-screw', way: 'in', turnsLeft: 1 });
  });

  it('a screw at its end is not offered, and a bigger pilot that is not owned is said so', () => {
    // Common practice, no source.
    expect(hangingIdleSteps({ ...screwAt(1), jets: [42.5] }, 2.25)).toEqual([
      { act: 'find-leak' },
      { act: 'lower-idle' },
      { act: 'bigger-pilot', jet: null },
    ]);
  });
});
