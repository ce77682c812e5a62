import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextSizesUp, nextSizeUp } from '@/lib/carb/existing-size';
import type { JetMarking } from '@/lib/carb/machine';

const FLOW: JetMarking = { kind: 'flow' };
const BORE: JetMarking = { kind: 'bore' };
const jets = (
  marking: JetMarking,
  sizes: readonly number[],
  mains: readonly number[] = [sizes[0] ?? 400],
) => ({
  marking,
  box: sizes.map((size) => ({ size, count: 1 })),
  carburettors: mains.map((main) => ({ main })),
});

describe('A size that is asked for', () => {
  it('is the next of the steps the box is made of', () => {
    expect(nextSizeUp(jets(FLOW, [400, 410]), 409)).toBe(410);
    expect(nextSizeUp(jets(FLOW, [400, 410]), 423.4)).toBe(430);
    expect(nextSizeUp(jets(FLOW, [400, 410]), 410)).toBe(410);
    expect(nextSizeUp(jets(FLOW, [380, 390, 400], [410]), 471)).toBe(480);
    expect(nextSizeUp(jets(BORE, [160, 162.5, 165]), 166)).toBe(167.5);
  });

  it('is of the usual steps where the box tells none (common practice, no source)', () => {
    expect(nextSizeUp(jets(FLOW, [170, 340]), 184.5)).toBe(185);
    expect(nextSizeUp(jets(FLOW, [410]), 414)).toBe(420);
    expect(nextSizeUp(jets(BORE, [180]), 184.5)).toBe(186);
  });

  it('is one that is owned where that comes first, though it stands on no step', () => {
    expect(nextSizeUp(jets(FLOW, [400, 410, 425]), 423)).toBe(425);
  });

  it('is of the own list and no other; beyond its end there is none', () => {
    const list: JetMarking = {
      kind: 'list',
      jets: [400, 412, 431].map((size) => ({ size, area: size })),
    };
    expect(nextSizeUp(jets(list, [400]), 405)).toBe(412);
    expect(nextSizeUp(jets(list, [400]), 440)).toBeNull();
    expect(nextSizesUp(jets(list, [400]), [405, 440])).toBeNull();
    expect(nextSizesUp(jets(list, [400]), [405, 430])).toEqual([412, 431]);
  });

  it('never is leaner than what is wanted, nor a whole step richer than it must be', () => {
    const steps = fc.constantFrom(2.5, 5, 10);
    fc.assert(
      fc.property(
        steps,
        fc.integer({ min: 20, max: 60 }),
        fc.double({ min: 0.8, max: 1.4, noNaN: true }),
        (step, k, by) => {
          const first = step * k;
          const box = [first, first + step, first + 2 * step];
          const wanted = first * by;
          const size = nextSizeUp(jets(FLOW, box), wanted)!;
          expect(size).toBeGreaterThanOrEqual(wanted * (1 - 1e-8));
          expect(size - wanted).toBeLessThanOrEqual(Math.max(step, wanted * 0.03));
          expect(size % step).toBeCloseTo(0, 6);
        },
      ),
    );
  });
});
