import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import { machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';

function planOf(given: Partial<PlanRequest> = {}): Plan {
  return expectOk(makePlan(requestOf(given)));
}

/** Warms from -14 °C to 5 °C: the jets go down. */
const THAW = seriesOf(Array.from({ length: 17 }, (_, i) => -14 + 1.2 * i));
const RICH_START = { fitted: { mains: [420], trim: null }, series: THAW };

describe('A swap on a warming day', () => {
  it('is made because the old jet turns too rich, where the limit is what asks for it', () => {
    const plan = planOf({
      ...RICH_START,
      options: { ...requestOf().options, worthIt: ratio(5) },
      machine: machineOf({ limits: { lean: ratio(0.02), rich: ratio(0.03), risk: ratio(0.05) } }),
    });
    const [first] = plan.swaps;
    expect(first!.reason.code).toBe('old-turns-rich');
    expect(first!.to.mains[0]).toBeLessThan(420);
    // The reason names the first run, from the swap on, that the old jet would be too rich in.
    const reason = first!.reason.code === 'old-turns-rich' ? first!.reason : null;
    const onOld = planOf({
      ...RICH_START,
      machine: machineOf({
        box: [{ size: 420, count: 1 }],
        limits: { lean: ratio(0.02), rich: ratio(0.03), risk: ratio(0.05) },
      }),
    });
    expect(reason!.run).toBe(onOld.runs.findIndex(({ grade }) => grade === 'rich'));
    const before = plan.runs[first!.beforeRun - 1]!;
    expect(before.chanceOfRich).toBeLessThanOrEqual(0.5);
  });

  it('is made for power where the limits would do without it, and gains what it says', () => {
    const plan = planOf({
      ...RICH_START,
      options: { ...requestOf().options, worthIt: ratio(0.001) },
      machine: machineOf({ limits: { lean: ratio(0.02), rich: ratio(0.2), risk: ratio(0.05) } }),
    });
    const [first] = plan.swaps;
    expect(first!.reason.code).toBe('power');
    const stint = plan.stints.find(({ firstRun }) => firstRun === first!.beforeRun)!;
    const runs = plan.runs.slice(stint.firstRun, stint.lastRun + 1);
    const loss = runs.reduce((sum, run) => sum + run.loss, 0) / runs.length;
    const gain = first!.reason.code === 'power' ? first!.reason.gain : Number.NaN;
    expect(first!.ifSkipped.loss - loss).toBeCloseTo(gain, 12);
    expect(gain * runs.length).toBeGreaterThan(0.001);
  });

  it('to a leaner jet is not said to be for a lean run that a later swap takes care of', () => {
    // Warm until midnight, then bitter cold: 420 is too much at first and too little at the end.
    const plan = planOf({
      fitted: { mains: [420], trim: null },
      series: seriesOf([2, 2, 2, 2, 2, 2, 2, -8, -18, -24, -26, -28, -29, -30, -30, -30, -30]),
      runs: runsOf({ first: 18, every: 60, count: 12 }),
      machine: machineOf({ limits: { lean: ratio(0.02), rich: ratio(0.2), risk: ratio(0.05) } }),
    });
    const [first, ...later] = plan.swaps;
    expect(first!.to.mains[0]).toBeLessThan(420);
    expect(first!.reason.code).toBe('power');
    expect(later.map(({ reason }) => reason.code)).toContain('old-turns-lean');
  });

  it('saves nothing on a run that counts for nothing', () => {
    const light = requestOf().runs.map((run) => ({ ...run, weight: 0 }));
    const limits = { lean: ratio(0.02), rich: ratio(0.2), risk: ratio(0.05) };
    expect(planOf({ ...RICH_START, runs: light, machine: machineOf({ limits }) }).swaps).toEqual([]);
  });
});

describe('The hours of the picture', () => {
  it('carry the old jet until the latest start of the swap, and the new one from then on', () => {
    const plan = planOf({ runs: runsOf({ first: 18, every: 60, count: 12 }) });
    const [swap] = plan.swaps;
    const leanestAt = (drift: number, baseline: number) => (1 + drift) / (1 + baseline);
    for (const { at, drift, baselineDrift } of plan.hours) {
      const size = 410 * leanestAt(drift, baselineDrift);
      if (at < swap!.latestStart) expect(size).toBeCloseTo(410, 6);
      if (at === addMinutes(swap!.latestStart, 15)) expect(size).toBeCloseTo(420, 6);
    }
  });
});
