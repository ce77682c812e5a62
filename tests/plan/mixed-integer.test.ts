import { describe, expect, it } from 'vitest';
import { costOf } from '@/lib/plan/choice';
import { optimise } from '@/lib/plan/optimise';
import { highsSolver } from '@/tests/support/highs-solver';
import { mixedIntegerOptimum } from '@/tests/support/mixed-integer';
import { dice, inventedChoice } from '@/tests/support/small-choices';

describe('The best plan of a larger night', () => {
  it('costs what a mixed-integer solver proves to be the least, in 200 nights', async () => {
    const solve = await highsSolver();
    for (let seed = 1; seed <= 200; seed++) {
      const roll = dice(10_000 + seed);
      const trims = 1 + roll.below(3);
      const size = {
        runs: 6 + roll.below(5),
        groups: 3 + roll.below(trims === 1 ? 6 : 2),
        trims,
        levels: 1000,
      };
      const choice = { ...inventedChoice(roll, size), swapCost: roll.below(900), turnCost: roll.below(90) };
      const proven = costOf(choice, mixedIntegerOptimum(choice, solve).plan);
      const { cost } = optimise(choice);
      // Whole numbers throughout, so the agreement asked for is exact and not to a tolerance.
      expect([cost.harm, cost.cost], `seed ${seed}`).toEqual([proven?.harm, proven?.cost]);
    }
  }, 60_000);
});
