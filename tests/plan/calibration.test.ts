import { beforeAll, describe, expect, it } from 'vitest';
import { GROUPS, outcomesOf, type RunOutcome, type Tally, tallyOf } from '@/tests/support/lean-runs';
import { WORLDS } from '@/tests/support/other-worlds';

type World = keyof typeof WORLDS;

/** Seeds of the nights: a small part of the 2,000 that the numbers in lib/plan/README.md are of. */
const NIGHTS = { from: 1, to: 300 };

/** Three standard errors of a share of 5 %; runs of one night share their weather, so about four count as one. */
function error({ runs }: Tally): number {
  return 6 * Math.sqrt((0.05 * 0.95) / runs);
}

describe('"At most 5 %"', () => {
  const outcomes = new Map<World, readonly RunOutcome[]>();
  const of = (world: World, group: keyof typeof GROUPS) => tallyOf(outcomes.get(world) ?? [], GROUPS[group]);
  beforeAll(() => {
    for (const world of Object.keys(WORLDS) as readonly World[])
      outcomes.set(world, outcomesOf(WORLDS[world], NIGHTS));
  }, 240_000);

  it('is kept by all runs, by those in deep cold and by those with a reading, in every world', () => {
    for (const world of outcomes.keys())
      for (const group of ['all runs', 'runs below -12 °C', 'runs below -12 °C with a reading'] as const) {
        const { runs, were } = of(world, group);
        expect(runs, `${world}, ${group}`).toBeGreaterThan(300);
        expect(were, `${world}, ${group}`).toBeLessThan(0.05);
      }
  });

  it('is kept by runs said 3 to 5 % in every world, also where nobody told of a raw model', () => {
    for (const world of outcomes.keys()) {
      const tally = of(world, 'runs said 3 to 5 %');
      expect(tally.runs, world).toBeGreaterThan(80);
      expect(tally.were, world).toBeLessThan(0.05 + error(tally));
    }
  });

  it('is kept best after a reading where a raw model runs warm, whether somebody told or not', () => {
    for (const world of [
      "a raw model's bias that nobody told of",
      "a raw model's bias that was told",
    ] as const) {
      const read = of(world, 'runs below -12 °C with a reading');
      expect(read.were, world).toBeLessThan(of(world, 'runs below -12 °C').were);
    }
  });
});
