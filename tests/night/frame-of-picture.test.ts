import { describe, expect, it } from 'vitest';
import { chartHeight, PAPER_WIDTH } from '@/components/night/picture/frame-of-picture';
import type { PlanWarning } from '@/lib/plan/types';
import { on, planOf } from '@/tests/words/plan-of';

const heightWith = (...warnings: readonly PlanWarning[]) =>
  chartHeight(PAPER_WIDTH, planOf([on(410), on(410)], { warnings }));

describe('the picture on paper', () => {
  const noJet = (run: number) => ({ code: 'no-jet-rich-enough', run, sizes: [430] }) as const;
  const noTime = { code: 'swap-does-not-fit', run: 1, gapMinutes: 8, swapMinutes: 15 } as const;

  it('leaves as much of the sheet as is said above it, and no more', () => {
    expect(heightWith(noJet(0))).toBeLessThan(heightWith());
    // One sentence names every run that no jet will do for; a warning has a block of its own.
    expect(heightWith(noJet(0), noJet(1))).toBe(heightWith(noJet(0)));
    expect(heightWith(noTime)).toBeLessThan(heightWith(noJet(0)));
  });
});
