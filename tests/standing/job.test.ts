import { describe, expect, it } from 'vitest';
import type { Plan, Swap } from '@/lib/plan/types';
import { jobOf } from '@/lib/standing/job';
import { addMinutes } from '@/lib/time/instant';
import { nightCase } from '@/tests/night/night-case';

const { plan } = nightCase();
const [swap] = plan.swaps;
if (swap === undefined) throw new Error('the demo night must have a swap');

const withSwap = (change: Partial<Swap>): Plan => ({ ...plan, swaps: [{ ...swap, ...change }] });

describe('the job', () => {
  it('is the first swap, told as ahead, open or late by its window', () => {
    expect(jobOf(plan, addMinutes(swap.windowStart, -1))).toMatchObject({ kind: 'swap', time: 'ahead' });
    expect(jobOf(plan, swap.windowStart)).toMatchObject({ time: 'open' });
    expect(jobOf(plan, swap.latestStart)).toMatchObject({ time: 'open' });
    expect(jobOf(plan, addMinutes(swap.latestStart, 1))).toMatchObject({ time: 'late' });
  });

  it('can be told as done only near its window', () => {
    expect(jobOf(plan, addMinutes(swap.windowStart, -120))).toMatchObject({ canBeDone: false });
    expect(jobOf(plan, addMinutes(swap.windowStart, -10))).toMatchObject({ canBeDone: true });
    expect(jobOf(plan, swap.windowStart)).toMatchObject({ canBeDone: true });
  });

  it('leaves out a swap before a run that is made', () => {
    const runs = plan.runs.map((run) => ({ ...run, state: 'made' as const, setting: swap.from }));
    const lastLeft = { ...plan.runs.at(-1)!, state: 'planned' as const };
    const late = { ...withSwap({ beforeRun: 2 }), runs: [...runs.slice(0, -1), lastLeft] };
    expect(jobOf(late, swap.windowStart)).toMatchObject({ kind: 'hold', runs: [lastLeft] });
  });

  it('is no swap where nothing has to be put in', () => {
    const none = { ...plan, swaps: [] };
    expect(jobOf(none, swap.windowStart)).toMatchObject({ kind: 'hold', setting: plan.runs[0]!.setting });
  });

  it('never holds where a run to come is lean or drowned', () => {
    for (const grade of ['lean', 'drowned'] as const) {
      const runs = plan.runs.map((run, i) => (i === 6 ? { ...run, grade } : run));
      const job = jobOf({ ...plan, swaps: [], runs }, swap.windowStart);
      expect(job).toMatchObject({ kind: 'do-not-race', runs: [runs[6]] });
    }
  });

  it('is over when every run is past, and wants hours where they do not reach', () => {
    const past = plan.runs.map((run) => ({ ...run, state: 'past' as const }));
    const end = plan.sortedRuns.at(-1)!.end;
    expect(jobOf({ ...plan, runs: past }, end)).toEqual({ kind: 'over' });
    const beyond = plan.runs.map((run) => ({ ...run, state: 'beyond-hours' as const }));
    expect(jobOf({ ...plan, runs: beyond }, addMinutes(plan.sortedRuns[0]!.start, -5))).toMatchObject({
      kind: 'no-hours',
    });
    expect(jobOf({ ...plan, runs: beyond }, end)).toEqual({ kind: 'over' });
  });
});
