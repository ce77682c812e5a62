import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { drifts, logDelivered } from '@/lib/carb/drift';
import { jetArea } from '@/lib/carb/jets';
import type { Trim } from '@/lib/carb/machine';
import { logTrim, trimPositions } from '@/lib/carb/trim';
import { ratio } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOf, raceMachine } from '../support/race-machine';

const TRIM: Trim = { lowest: 1, highest: 5, baseline: 3, richerPerPosition: ratio(0.02) };
const STAGGERED = raceMachine({ carburettors: [{ main: 410 }, { main: 400 }, { main: 410 }] });

describe('drift', () => {
  it('is nothing for the baseline in its own air', () => {
    expect(drifts(STAGGERED, baselineSetting(STAGGERED), STAGGERED.baselineAir)).toEqual([0, 0, 0]);
  });

  it('is lean in colder air and rich in warmer, alike in every carburettor', () => {
    const setting = baselineSetting(STAGGERED);
    const colder = drifts(STAGGERED, setting, airOf(-25, 990, 0.7));
    expect(colder.every((drift) => drift < -0.03)).toBe(true);
    expect(new Set(colder.map((drift) => drift.toFixed(12))).size).toBe(1);
    expect(drifts(STAGGERED, setting, airOf(5, 990, 0.7)).every((drift) => drift > 0.03)).toBe(true);
  });

  it("420 in place of 410 is 2.4 % rich in the baseline's air", () => {
    const [left, right] = drifts(raceMachine(), { mains: [420, 410], trim: null }, raceMachine().baselineAir);
    expect(left).toBeCloseTo(420 / 410 - 1, 12);
    expect(right).toBe(0);
  });

  it('the ideal sizes have no drift, in any marking and any air', () => {
    const celsius = fc.double({ min: -40, max: 40, noNaN: true });
    const hectopascal = fc.double({ min: 650, max: 1050, noNaN: true });
    const marking = fc.constantFrom('flow' as const, 'bore' as const);
    fc.assert(
      fc.property(celsius, hectopascal, marking, (t, p, kind) => {
        const machine = raceMachine({ marking: { kind }, carburettors: [{ main: 410 }, { main: 390 }] });
        const air = airOf(t, p, 0.6);
        for (const drift of drifts(machine, { mains: idealSizes(machine, air), trim: null }, air))
          expect(drift).toBeCloseTo(0, 10);
      }),
    );
  });

  it('a staggered baseline keeps its stagger in the ideal', () => {
    const [first, second, third] = idealSizes(STAGGERED, airOf(-25, 950, 0.5));
    expect(first! / second!).toBeCloseTo(410 / 400, 12);
    expect(third).toBe(first);
  });

  it('ideal bore marks move half as far as ideal flow marks', () => {
    const air = airOf(-25, 990, 0.7);
    const [flow] = idealSizes(raceMachine(), air);
    const bore = raceMachine({ marking: { kind: 'bore' }, carburettors: [{ main: 164 }] });
    const [drilled] = idealSizes(bore, air);
    expect(jetArea({ kind: 'bore' }, drilled!) / jetArea({ kind: 'bore' }, 164)).toBeCloseTo(flow! / 410, 12);
    expect(Math.log(drilled! / 164)).toBeCloseTo(Math.log(flow! / 410) / 2, 12);
  });

  it('two jets for three carburettors is a programming error', () => {
    expect(() => logDelivered(STAGGERED, { mains: [410, 400], trim: null })).toThrow(RangeError);
  });
});

describe('trim', () => {
  const machine = raceMachine({ trim: TRIM });

  it('the baseline setting stands on the baseline position', () => {
    expect(baselineSetting(machine)).toEqual({ mains: [410, 410], trim: 3 });
    expect(baselineSetting(raceMachine()).trim).toBeNull();
  });

  it('two positions up is twice two percent rich, compounded', () => {
    const [drift] = drifts(machine, { mains: [410, 410], trim: 5 }, machine.baselineAir);
    expect(drift).toBeCloseTo(1.02 ** 2 - 1, 12);
  });

  it('up and down again is nothing', () => {
    expect(logTrim(TRIM, 4) + logTrim(TRIM, 2)).toBeCloseTo(0, 15);
  });

  it('counts for nothing where there is no trim or none is told', () => {
    expect(logTrim(null, 4)).toBe(0);
    expect(logTrim(TRIM, null)).toBe(0);
  });

  it('lists its positions from the leanest, and null where there is none', () => {
    expect(trimPositions(TRIM)).toEqual([1, 2, 3, 4, 5]);
    expect(trimPositions(null)).toEqual([null]);
  });
});
