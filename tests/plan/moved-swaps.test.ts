import { describe, expect, test } from 'vitest';
import { comparePlans } from '@/lib/plan/difference';
import { on, planOf, swapTo } from '@/tests/words/plan-of';

const late = planOf([on(410), on(410), on(410), on(420)], { swaps: [swapTo(3, on(410), on(420))] });
const early = planOf([on(410), on(410), on(420), on(420)], { swaps: [swapTo(2, on(410), on(420))] });
const codes = (before: typeof late, after: typeof late) =>
  comparePlans(before, after).changes.map(({ code }) => code);

describe('A swap that moved', () => {
  test('is told as moved, whether it comes earlier or later', () => {
    expect(codes(late, early)).toEqual(['swap-moved']);
    expect(codes(early, late)).toEqual(['swap-moved']);
  });

  test('is not told at all once the jets are in, though the plan had them later', () => {
    const in420 = planOf([on(410), on(410), on(420), on(420)], {
      runs: early.runs.map((run) => (run.run < 3 ? { ...run, state: 'made' } : run)),
    });
    expect(codes(late, in420)).toEqual([]);
  });
});
