import { beforeAll, describe, expect, it } from 'vitest';
import { GROUPS, type RunOutcome, tallyOf } from '@/tests/support/lean-runs';
import { WORLDS } from '@/tests/support/other-worlds';
import { REAL_NIGHTS } from './real-nights';
import { type Season, seasonOf } from './season';

/** A small seeded part of `npm run hindcast`. */
const NIGHTS = 50;
const NIGHTS_ELSEWHERE = 15;

const READ = 'the plan, a reading before each run';
const PLANS = ['the plan', READ] as const;

describe('A season of real hours', () => {
  let season: Season;
  const elsewhere = new Map<string, readonly RunOutcome[]>();
  const scoreOf = (way: keyof Season['scores']) => season.scores[way]!;

  beforeAll(() => {
    season = seasonOf(WORLDS['as stated'], NIGHTS);
    for (const [name, world] of Object.entries(WORLDS))
      elsewhere.set(name, seasonOf(world, NIGHTS_ELSEWHERE, PLANS).outcomes);
  }, 240_000);

  it('is made of hours as stations had them', () => {
    expect(REAL_NIGHTS.map(({ hours }) => hours.length)).toEqual([16, 16, 16, 16, 16, 16, 16, 13]);
    const lows = REAL_NIGHTS.map(({ hours }) => Math.min(...hours.map((each) => each.temperature)) - 273.15);
    // Read off the files: the coldest hour of each night.
    expect(lows.map((low) => Math.round(10 * low) / 10)).toEqual([-22.8, -5, -16, -11, -24.3, -26, -23, -7]);
  });

  it('is far safer by the plan than by keeping, reacting or one size richer', () => {
    for (const plan of PLANS)
      for (const other of ['keep the baseline', 'react at 3 % lean', 'one size richer all night'] as const)
        expect(scoreOf(plan).leanRuns, `${plan} and ${other}`).toBeLessThan(scoreOf(other).leanRuns / 3);
  });

  it('takes fewer swaps by the plan with readings than by a thermometer and the law, and is as safe', () => {
    const nearest = scoreOf('thermometer, nearest');
    const richer = scoreOf('thermometer, next richer');
    const plan = scoreOf(READ);
    expect(plan.swapsPerNight).toBeLessThan(Math.min(nearest.swapsPerNight, richer.swapsPerNight));
    expect(plan.leanRuns).toBeLessThanOrEqual(nearest.leanRuns);
    expect(plan.richLoss).toBeLessThan(richer.richLoss);
  });

  it('keeps "at most 5 %" in every world: all runs, in deep cold, and with a reading', () => {
    for (const [world, outcomes] of elsewhere)
      for (const group of ['all runs', 'runs below -12 °C', 'runs below -12 °C with a reading'] as const) {
        const { runs, were } = tallyOf(outcomes, GROUPS[group]);
        expect(runs, `${world}, ${group}`).toBeGreaterThan(40);
        expect(were, `${world}, ${group}`).toBeLessThan(0.05);
      }
  });
});
