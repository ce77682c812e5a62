import { describe, expect, it } from 'vitest';
import { countdown } from '@/components/night/plate/countdown';
import { nextAct } from '@/components/night/plate/next-act';
import type { Plan, Swap } from '@/lib/plan/types';
import { addMinutes, instant } from '@/lib/time/instant';
import { nightCase } from './night-case';

const { plan } = nightCase();
const [swap] = plan.swaps;
if (swap === undefined) throw new Error('the demo night must have a swap');

const withSwap = (change: Partial<Swap>): Plan => ({ ...plan, swaps: [{ ...swap, ...change }] });

describe('the next act', () => {
  it('is the first swap, told as ahead, open or late by its window', () => {
    expect(nextAct(plan, addMinutes(swap.windowStart, -1))).toMatchObject({ kind: 'swap', time: 'ahead' });
    expect(nextAct(plan, swap.windowStart)).toMatchObject({ time: 'open' });
    expect(nextAct(plan, swap.latestStart)).toMatchObject({ time: 'open' });
    expect(nextAct(plan, addMinutes(swap.latestStart, 1))).toMatchObject({ time: 'late' });
  });

  it('leaves out a swap before a run that is made', () => {
    const runs = plan.runs.map((run) => ({ ...run, state: 'made' as const, setting: swap.from }));
    const lastLeft = { ...plan.runs.at(-1)!, state: 'planned' as const };
    const late = { ...withSwap({ beforeRun: 2 }), runs: [...runs.slice(0, -1), lastLeft] };
    expect(nextAct(late, swap.windowStart)).toMatchObject({ kind: 'hold', lastRun: lastLeft.run });
  });

  it('is no swap where nothing has to be fitted', () => {
    const held = nextAct({ ...plan, swaps: [] }, swap.windowStart);
    expect(held).toEqual({ kind: 'hold', setting: plan.runs[0]?.setting, lastRun: 7 });
  });

  it('is over when every run is made', () => {
    const runs = plan.runs.map((run) => ({ ...run, state: 'made' as const }));
    expect(nextAct({ ...plan, runs }, swap.windowStart)).toEqual({ kind: 'over' });
  });
});

describe('the countdown', () => {
  const now = instant(Date.UTC(2027, 0, 16, 18));

  it.each([
    [0, 'now'],
    [12, 'in 12 min'],
    [72, 'in 1 h 12 min'],
    [120, 'in 2 h'],
    [26 * 60 + 5, 'in 1 d 2 h'],
    [-5, '5 min ago'],
  ])('says %d minutes as "%s"', (minutes, words) => {
    expect(countdown(now, addMinutes(now, minutes))).toBe(words);
  });
});
