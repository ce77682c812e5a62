import { describe, expect, it } from 'vitest';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { drifts } from '@/lib/carb/drift';
import { addShifts, judgedShift } from '@/lib/carb/judged';
import { LIMIT_CHOICES, limitChoiceOf } from '@/lib/carb/limits';
import { ratio } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { raceMachine } from '../support/race-machine';

const machine = { ...raceMachine(), main: 410 };

describe('how the baseline was judged', () => {
  it('right: the jet stays, with a quarter of a size of doubt', () => {
    const { log, sd } = judgedShift('right', machine);
    expect(log).toBe(0);
    expect(sd).toBeCloseTo(Math.log(420 / 410) / 4, 12);
  });

  it('on the edge: the baseline sits exactly on the lean limit', () => {
    const edge = raceMachine({ baselineShift: judgedShift('edge', machine) });
    for (const drift of drifts(edge, baselineSetting(edge), edge.baselineAir))
      expect(drift).toBeCloseTo(-0.02, 12);
  });

  it('a size rich: the right jet is the next smaller one', () => {
    const rich = raceMachine({ baselineShift: judgedShift('size-rich', machine) });
    // The step up from 410 is 2.41 % in logs and the one down 2.47 %: 400.2 where 400 is meant.
    expect(idealSizes(rich, rich.baselineAir)[0]).toBeCloseTo(400, 0);
    expect(rich.baselineShift!.sd).toBeGreaterThan(judgedShift('right', machine).sd);
  });

  it('two doubts add as squares, two shifts as they are', () => {
    const sum = addShifts({ log: 0.02, sd: 0.03 }, { log: -0.05, sd: 0.04 });
    expect(sum.log).toBeCloseTo(-0.03, 12);
    expect(sum.sd).toBeCloseTo(0.05, 12);
  });
});

describe('limits by plain choice', () => {
  it('break-in allows no lean at all, and trail less than race', () => {
    expect(LIMIT_CHOICES['break-in'].lean).toBe(0);
    expect(LIMIT_CHOICES.trail.lean).toBeLessThan(LIMIT_CHOICES.race.lean);
    expect(LIMIT_CHOICES.trail.risk).toBeLessThan(LIMIT_CHOICES.race.risk);
  });

  it("numbers that match a choice are named, and a person's own are not", () => {
    expect(limitChoiceOf({ ...LIMIT_CHOICES.trail })).toBe('trail');
    expect(limitChoiceOf({ ...LIMIT_CHOICES.race, lean: ratio(0.025) })).toBeNull();
  });
});
