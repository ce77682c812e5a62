import { describe, expect, it } from 'vitest';
import { swapWorth, usualSwapWorth } from '@/lib/carb/swap-worth';
import { ratio } from '@/lib/units/quantity';
import { machineOf } from '@/tests/support/plan-cases';

const withCount = (count: number, own: number | null) =>
  machineOf({
    carburettors: Array.from({ length: count }, () => ({ main: 410 })),
    swapWorth: own === null ? null : ratio(own),
  });

describe('What a swap is worth', () => {
  it('grows with the carburettors to strip: half a percent each (common practice, no source)', () => {
    expect([1, 2, 3, 6].map((count) => usualSwapWorth(count) * 100)).toEqual([0.5, 1, 1.5, 3]);
    expect(swapWorth(withCount(3, null))).toBe(usualSwapWorth(3));
  });

  it('is what the person says where they say it, nothing at all included', () => {
    expect(swapWorth(withCount(3, 0.002))).toBe(0.002);
    expect(swapWorth(withCount(3, 0))).toBe(0);
  });
});
