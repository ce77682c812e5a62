import { describe, expect, it } from 'vitest';
import { makePlan, planMany } from '@/lib/plan/make-plan';
import { ratio } from '@/lib/units/quantity';
import { clock, machineOf, requestOf, runsOf } from '@/tests/support/plan-cases';

const STAGGERED = [390, 402, 411, 423, 437, 449].map((main) => ({ main }));
const HUNDRED_SIZES = Array.from({ length: 100 }, (_, i) => ({ size: 300 + 2 * i, count: 6 }));
const FINE_TRIM = { lowest: -20, highest: 40, baseline: 0, richerPerPosition: ratio(0.0005) };
const MANY_RUNS = runsOf({ first: 18, every: 12, count: 60 });

describe('A request that would keep everybody waiting', () => {
  it('is refused with what it asks for: six staggered carburettors, a hundred sizes, sixty trim positions', () => {
    const machine = machineOf({ carburettors: STAGGERED, box: HUNDRED_SIZES, trim: FINE_TRIM });
    expect(makePlan(requestOf({ machine, runs: MANY_RUNS }))).toEqual({
      ok: false,
      reason: { code: 'too-much-at-once', machines: 1, settings: 6 * 100 * 61, runHours: 10 },
    });
  });

  it('is planned with the same box and no trim, and a night of rides that last all night too', () => {
    const machine = machineOf({ carburettors: STAGGERED, box: HUNDRED_SIZES });
    expect(makePlan(requestOf({ machine, runs: MANY_RUNS.slice(0, 12) })).ok).toBe(true);
    const ride = { ...MANY_RUNS[0]!, start: clock(18), end: clock(32) };
    expect(makePlan(requestOf({ runs: [ride, ride, ride] })).ok).toBe(true);
  });

  it('is refused as a whole where each machine alone would be planned', () => {
    const request = requestOf({
      machine: machineOf({ carburettors: STAGGERED, box: HUNDRED_SIZES }),
      runs: MANY_RUNS,
    });
    const plans = planMany(Array.from({ length: 30 }, () => request));
    expect(plans).toHaveLength(30);
    expect(new Set(plans.map((plan) => (plan.ok ? 'plan' : plan.reason.code)))).toEqual(
      new Set(['too-much-at-once']),
    );
  });

  it('is no field of a hundred with full boxes', () => {
    const field = Array.from({ length: 100 }, () =>
      requestOf({ machine: machineOf({ box: HUNDRED_SIZES }) }),
    );
    expect(planMany(field).every((plan) => plan.ok)).toBe(true);
  });
});
