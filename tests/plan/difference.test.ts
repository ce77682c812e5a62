import { describe, expect, it } from 'vitest';
import { comparePlans } from '@/lib/plan/difference';
import { makePlan } from '@/lib/plan/make-plan';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { kelvin } from '@/lib/units/quantity';
import { COLD_NIGHT, clock, machineOf, requestOf } from '@/tests/support/plan-cases';

function planOf(given: Partial<PlanRequest> = {}): Plan {
  return expectOk(makePlan(requestOf(given)));
}

function colder(by: number): Partial<PlanRequest> {
  const hours = COLD_NIGHT.hours.map((hour) => ({ ...hour, temperature: kelvin(hour.temperature - by) }));
  return { series: { ...COLD_NIGHT, hours } };
}

const PLAN = planOf();

describe('The difference between two plans', () => {
  it('is nothing between a plan and itself', () => {
    expect(comparePlans(PLAN, planOf())).toEqual({ changes: [], nextActChanged: false });
  });

  it('says which swap moved, from when to when, and how much colder it is then', () => {
    const after = planOf(colder(2.1));
    const { changes, nextActChanged } = comparePlans(PLAN, after);
    expect(changes[0]).toEqual({
      code: 'swap-moved',
      from: PLAN.swaps[0],
      to: after.swaps[0],
      colder: expect.closeTo(2.1, 9),
    });
    expect(after.swaps[0]!.beforeRun).toBeLessThan(PLAN.swaps[0]!.beforeRun);
    expect(nextActChanged).toBe(true);
  });

  it('tells a dropped swap from an added one', () => {
    const warm = planOf(colder(-2.5));
    expect(warm.swaps.length).toBe(1);
    const codes = (before: Plan, after: Plan) => comparePlans(before, after).changes.map(({ code }) => code);
    expect(codes(PLAN, warm)).toEqual(['swap-moved', 'swap-dropped']);
    expect(codes(warm, PLAN)).toEqual(['swap-moved', 'swap-added']);
  });

  it('tells another jet at the same time from another time', () => {
    const coarse = planOf({
      machine: machineOf({ box: [410, 422, 430].map((size) => ({ size, count: 1 })) }),
    });
    const { changes, nextActChanged } = comparePlans(PLAN, coarse);
    expect(changes[0]).toMatchObject({
      code: 'swap-target-changed',
      from: { to: { mains: [420] } },
      to: { to: { mains: [422] } },
      colder: 0,
    });
    expect(nextActChanged).toBe(true);
  });

  it('tells another start of the night', () => {
    const cold = planOf(colder(6));
    expect(comparePlans(PLAN, cold).changes[0]).toEqual({
      code: 'start-changed',
      from: PLAN.runs[0]!.setting,
      to: cold.runs[0]!.setting,
    });
  });

  it('does not count what was done as a change: the swap that was made, early or in time', () => {
    const made = [0, 1, 2].map((run) => ({ run, setting: PLAN.runs[run]!.setting }));
    const fitted = { mains: [420], trim: null };
    const inTime = planOf({ made, fitted, now: clock(19.8) });
    expect(comparePlans(PLAN, inTime)).toEqual({ changes: [], nextActChanged: false });
    const past = planOf({ made: [...made, { run: 3, setting: fitted }], fitted, now: clock(20.3) });
    expect(comparePlans(PLAN, past)).toEqual({ changes: [], nextActChanged: false });
  });
});
