import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leanCountOf } from '@/lib/plan/grade';

const count = (chance: number, risk = 0.05) => leanCountOf(chance, risk, 64).lean;

describe('A chance of lean as a count', () => {
  it('is rounded', () => {
    expect([0, 0.004, 0.01, 0.03, 0.5, 1].map((chance) => count(chance))).toEqual([0, 0, 1, 2, 32, 64]);
  });

  it('is over the limit exactly where the chance is: 5 % of 64 is 3.2', () => {
    expect([0.045, 0.05, 0.0501, 0.054, 0.06].map((chance) => count(chance))).toEqual([3, 3, 4, 4, 4]);
    // 5.5 % of 64 is 3.52, which rounds to 4; 4 of 64 would be 6.25 %.
    expect(count(0.055, 0.055)).toBe(3);
  });

  it('keeps runs within the limit apart from those over it, whatever chance and limit', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        fc.constantFrom(16, 64, 100),
        (a, b, risk, of) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const [less, more] = [leanCountOf(low, risk, of).lean, leanCountOf(high, risk, of).lean];
          expect(less).toBeLessThanOrEqual(more);
          if (low <= risk && high > risk) expect(less).toBeLessThan(more);
          expect(more).toBeLessThanOrEqual(of);
          expect(Math.abs(more - high * of)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});
