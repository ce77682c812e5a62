import { describe, expect, it } from 'vitest';
import { compareCosts, costOf, type RunChoice } from '@/lib/plan/choice';
import { bestBySwaps, bestOtherFirstAct, countSwaps, optimise } from '@/lib/plan/optimise';
import { bruteForce, dice, inventedChoice } from '@/tests/support/small-choices';

function smallChoice(seed: number): RunChoice {
  const roll = dice(seed);
  const trims = 1 + roll.below(2);
  const groups = 1 + roll.below(trims === 2 ? 2 : 4);
  return inventedChoice(roll, { runs: 1 + roll.below(5), groups, trims, levels: 2 + roll.below(6) });
}

/** One run after another on what is fitted, made by hand: runs of one letter a jet, upper case where it is lean. */
function byHand(given: Partial<RunChoice> & Pick<RunChoice, 'runs' | 'candidates' | 'loss'>): RunChoice {
  const { runs, candidates } = given;
  return {
    group: Array.from({ length: candidates }, (_, c) => c),
    lean: new Float64Array(runs * candidates),
    rich: new Float64Array(runs * candidates),
    gaps: Array.from({ length: runs }, () => 'swap' as const),
    steps: Float64Array.from({ length: candidates ** 2 }, (_, i) =>
      Math.abs((i % candidates) - Math.floor(i / candidates)),
    ),
    start: 0,
    swapCost: 5,
    turnCost: 1,
    ...given,
  };
}

describe('The best plan', () => {
  it('costs what the best of all plans costs, ties included, in 10,000 small nights', () => {
    for (let seed = 1; seed <= 10_000; seed++) {
      const choice = smallChoice(seed);
      const { plan, cost } = optimise(choice);
      const best = bruteForce(choice);
      expect(best, `seed ${seed}`).not.toBeNull();
      expect([cost.harm, cost.cost, cost.tie], `seed ${seed}`).toEqual([best!.harm, best!.cost, best!.tie]);
      expect(costOf(choice, plan), `seed ${seed}`).toEqual(cost);
    }
  });

  it('puts lean risk before rich runs, and rich runs before power', () => {
    const choice = byHand({
      runs: 1,
      candidates: 3,
      lean: Float64Array.of(1, 0, 0),
      rich: Float64Array.of(0, 1, 0),
      loss: Float64Array.of(0, 10, 900),
    });
    expect(optimise(choice).plan).toEqual([2]);
    expect(optimise({ ...choice, lean: Float64Array.of(0, 0, 1) }).plan).toEqual([0]);
    expect(optimise({ ...choice, lean: Float64Array.of(1, 0, 1) }).plan).toEqual([1]);
  });

  it('leaves the jet in where a swap saves no more than it is worth', () => {
    const even = byHand({ runs: 2, candidates: 2, loss: Float64Array.of(3, 0, 2, 0) });
    expect(optimise(even).plan).toEqual([0, 0]);
    expect(optimise({ ...even, loss: Float64Array.of(3, 0, 3, 0) }).plan).toEqual([1, 1]);
  });

  it('keeps the jet longest where two moments to swap cost the same', () => {
    const choice = byHand({ runs: 3, candidates: 2, loss: Float64Array.of(0, 0, 0, 0, 9, 0) });
    expect(optimise(choice).plan).toEqual([0, 0, 1]);
  });

  it('takes the smaller step where two jets do the same', () => {
    const choice = byHand({
      runs: 1,
      candidates: 4,
      start: 1,
      loss: Float64Array.of(9, 9, 9, 0),
      swapCost: 1,
    });
    expect(optimise({ ...choice, loss: Float64Array.of(0, 9, 0, 0) }).plan).toEqual([0]);
    expect(optimise({ ...choice, loss: Float64Array.of(9, 9, 0, 0) }).plan).toEqual([2]);
  });

  it('turns the trim where there is no time for a swap, and does nothing where runs overlap', () => {
    const choice = byHand({
      runs: 1,
      candidates: 3,
      group: [0, 0, 1],
      steps: new Float64Array(4),
      loss: Float64Array.of(90, 40, 0),
    });
    expect(optimise(choice).plan).toEqual([2]);
    expect(optimise({ ...choice, gaps: ['trim'] }).plan).toEqual([1]);
    expect(optimise({ ...choice, gaps: ['nothing'] }).plan).toEqual([0]);
  });
});

describe('The best plan for each number of swaps', () => {
  it('is what looking at every plan with so many swaps finds, and more swaps always buy something', () => {
    for (let seed = 1; seed <= 1500; seed++) {
      const choice = smallChoice(seed);
      const listed = bestBySwaps(choice, choice.runs);
      const free = { ...choice, swapCost: 0 };
      expect(listed[0]?.swaps, `seed ${seed}`).toBe(0);
      for (let most = 0; most <= choice.runs; most++) {
        const best = bruteForce(free, (plan) => countSwaps(choice, plan) <= most)!;
        const entry = listed.filter(({ swaps }) => swaps <= most).at(-1)!;
        expect([entry.cost.harm, entry.cost.cost], `seed ${seed}, ${most}`).toEqual([best.harm, best.cost]);
      }
      for (const [i, entry] of listed.entries()) {
        expect(costOf(free, entry.plan)).toEqual(entry.cost);
        if (i === 0) continue;
        expect(entry.swaps).toBeGreaterThan(listed[i - 1]!.swaps);
        expect(compareCosts(entry.cost, listed[i - 1]!.cost)).toBeLessThan(0);
      }
    }
  });
});

describe('The runner-up', () => {
  it('is the best of all plans with another first act', () => {
    const firstAct = (choice: RunChoice, plan: readonly number[]) => {
      const run = plan.findIndex((candidate) => candidate !== choice.start);
      return run === -1 ? 'none' : `${run} ${plan[run]}`;
    };
    for (let seed = 1; seed <= 1500; seed++) {
      const choice = smallChoice(seed);
      const solution = optimise(choice);
      const act = firstAct(choice, solution.plan);
      const best = bruteForce(choice, (plan) => firstAct(choice, plan) !== act);
      const other = bestOtherFirstAct(choice, solution);
      expect(other?.cost ?? null, `seed ${seed}`).toEqual(best);
      if (other !== null) {
        expect(firstAct(choice, other.plan), `seed ${seed}`).not.toBe(act);
        expect(costOf(choice, other.plan), `seed ${seed}`).toEqual(other.cost);
      }
    }
  });
});
