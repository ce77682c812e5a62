import { describe, expect, it } from 'vitest';
import { compareCosts } from '@/lib/plan/choice';
import { decide } from '@/lib/plan/decide';
import { makePlan, planMany } from '@/lib/plan/make-plan';
import { type PreparedNight, prepareNight } from '@/lib/plan/night';
import { bestBySwaps, countSwaps, optimise } from '@/lib/plan/optimise';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { viewOf } from '@/lib/plan/view';
import { expectOk } from '@/lib/result/result';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import { clock, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';
import { simulatedNight } from '@/tests/support/simulated-nights';
import { dice, inventedChoice } from '@/tests/support/small-choices';

function planOf(request: PlanRequest): Plan {
  return expectOk(makePlan(request));
}

/** Jet swaps of the best plan on a night that is prepared already. */
function swapsOf(request: PlanRequest, night: PreparedNight): number {
  const { choice, fresh } = decide(request, viewOf(request.machine, night));
  return countSwaps(choice, fresh.plan);
}

function jetSwaps(plan: Plan): number {
  return plan.swaps.filter(({ kind }) => kind === 'jets').length;
}

function keepsLimits(plan: Plan, { machine }: PlanRequest): boolean {
  return plan.runs.every((run) => run.chanceOfLean <= machine.limits.risk && run.chanceOfRich <= 0.5);
}

const NIGHTS = Array.from({ length: 60 }, (_, i) => simulatedNight(20_000 + i).request);

function withWorth(request: PlanRequest, worthIt: number): PlanRequest {
  return { ...request, options: { ...request.options, worthIt: ratio(worthIt) } };
}

describe('A dearer swap', () => {
  it('never adds swaps, in any choice', () => {
    for (let seed = 1; seed <= 2000; seed++) {
      const roll = dice(40_000 + seed);
      const choice = inventedChoice(roll, { runs: 8, groups: 4, trims: 1 + roll.below(2), levels: 9 });
      const counts = [0, 1, 2, 4, 8, 16, 64].map((swapCost) =>
        countSwaps(choice, optimise({ ...choice, swapCost }).plan),
      );
      for (let i = 1; i < counts.length; i++)
        expect(counts[i], `seed ${seed}`).toBeLessThanOrEqual(counts[i - 1]!);
    }
  });

  it('never adds swaps to a night', () => {
    for (const request of NIGHTS) {
      const night = prepareNight(request);
      const counts = [0, 0.001, 0.005, 0.02, 0.1, 1].map((worth) =>
        swapsOf(withWorth(request, worth), night),
      );
      for (let i = 1; i < counts.length; i++) expect(counts[i]).toBeLessThanOrEqual(counts[i - 1]!);
    }
  });
});

describe('A wider limit', () => {
  const widen = (request: PlanRequest, by: Partial<PlanRequest['machine']['limits']>): PlanRequest => ({
    ...request,
    machine: { ...request.machine, limits: { ...request.machine.limits, ...by } },
  });

  it('never adds swaps where swaps are made for the limits alone and the narrow limits can be kept', () => {
    let compared = 0;
    for (const request of NIGHTS) {
      const narrow = withWorth(request, 10);
      const night = prepareNight(narrow);
      if (!keepsLimits(planOf(narrow), narrow)) continue;
      compared += 1;
      const swaps = swapsOf(narrow, night);
      for (const by of [
        { lean: ratio(0.03) },
        { rich: ratio(0.08) },
        { risk: ratio(0.2) },
        { lean: ratio(0.04), rich: ratio(0.07) },
      ])
        expect(swapsOf(widen(narrow, by), night)).toBeLessThanOrEqual(swaps);
    }
    expect(compared).toBeGreaterThan(30);
  });

  it('may add a swap that saves power, once it lets a leaner jet in', () => {
    // Warm, warmer, warmest: with no lean allowance 430 stays in for good; with one, 410 is let in and worth a swap.
    const request = requestOf({
      machine: machineOf({
        box: [410, 430].map((size) => ({ size, count: 1 })),
        carburettors: [{ main: 420 }],
      }),
      fitted: { mains: [430], trim: null },
      series: seriesOf([-6, -6, -5, -4, -3, -2, -1, 0]),
      runs: runsOf({ first: 17.5, every: 60, count: 6 }),
    });
    const strict = planOf(widen(request, { lean: ratio(0.001), rich: ratio(0.2) }));
    const wide = planOf(widen(request, { lean: ratio(0.03), rich: ratio(0.2) }));
    expect(keepsLimits(strict, widen(request, { lean: ratio(0.001) }))).toBe(true);
    expect([jetSwaps(strict), jetSwaps(wide)]).toEqual([0, 1]);
  });
});

describe('One more swap allowed', () => {
  it('never raises what is lost', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const roll = dice(60_000 + seed);
      const listed = bestBySwaps(inventedChoice(roll, { runs: 9, groups: 5, trims: 1, levels: 50 }), 9);
      for (let i = 1; i < listed.length; i++)
        expect(compareCosts(listed[i]!.cost, listed[i - 1]!.cost)).toBeLessThan(0);
    }
    for (const request of NIGHTS) {
      const { bySwapCount } = planOf(request);
      for (let i = 1; i < bySwapCount.length; i++) {
        const [fewer, more] = [bySwapCount[i - 1]!, bySwapCount[i]!];
        expect(more.swaps).toBeGreaterThan(fewer.swaps);
        if (more.leanRunsOverRisk === 0 && fewer.leanRunsOverRisk === 0 && more.richRuns === fewer.richRuns)
          expect(more.loss).toBeLessThan(fewer.loss);
      }
    }
  });

  it('is listed with the chosen plan among them, where no trim is in play', () => {
    for (const request of NIGHTS) {
      const plan = planOf(request);
      const same = plan.bySwapCount.find(({ swaps }) => swaps === jetSwaps(plan));
      expect(same?.settings).toEqual(plan.runs.map(({ setting }) => setting));
    }
  });
});

describe('One more jet in the box', () => {
  it('never makes the best plan worse', () => {
    for (const [i, request] of NIGHTS.entries()) {
      const roll = dice(70_000 + i);
      const thin = [360, 380, 400, 410, 420, 430, 440, 460].map((size) => ({ size, count: roll.below(4) }));
      const box = thin.some(({ count }) => count >= 3) ? thin : [...thin, { size: 450, count: 3 }];
      const added = [...box, { size: 370 + 10 * roll.below(9), count: 1 }];
      const night = prepareNight(request);
      const costOf = (given: typeof box) => {
        const machine = { ...request.machine, box: given };
        return decide({ ...request, machine }, viewOf(machine, night)).fresh.cost;
      };
      const [before, after] = [costOf(box), costOf(added)];
      expect(after.harm).toBeLessThanOrEqual(before.harm);
      if (after.harm === before.harm) expect(after.cost).toBeLessThanOrEqual(before.cost);
    }
  });
});

/** The same value with every instant moved: they are the only numbers beyond the year 2001 in milliseconds. */
function moved(value: unknown, by: number): unknown {
  if (typeof value === 'number') return value > 1e12 ? value + by : value;
  if (Array.isArray(value)) return value.map((each) => moved(each, by));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, moved(each, by)]));
}

function rounded(value: unknown): unknown {
  if (typeof value === 'number') return value > 1e12 ? Math.round(value / 10) : Number(value.toPrecision(9));
  if (Array.isArray(value)) return value.map(rounded);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
}

function movedRequest(request: PlanRequest, minutes: number): PlanRequest {
  const later = (at: Instant) => addMinutes(at, minutes);
  const { series, runs, readings, now } = request;
  const { issuedAt, fetchedAt } = series.source;
  return {
    ...request,
    now: later(now),
    runs: runs.map((run) => ({ ...run, start: later(run.start), end: later(run.end) })),
    readings: readings.map((reading) => ({ ...reading, at: later(reading.at) })),
    series: {
      ...series,
      hours: series.hours.map((hour) => ({ ...hour, at: later(hour.at) })),
      source: {
        ...series.source,
        issuedAt: issuedAt === null ? null : later(issuedAt),
        fetchedAt: fetchedAt === null ? null : later(fetchedAt),
      },
    },
  };
}

describe('Shifting all clocks', () => {
  it('shifts the plan and nothing else', () => {
    for (const request of NIGHTS.slice(0, 12))
      for (const minutes of [7, 60, 97 * 24 * 60 + 13]) {
        const plan = rounded(moved(planOf(request), minutes * 60_000));
        expect(rounded(planOf(movedRequest(request, minutes)))).toEqual(plan);
      }
  });
});

function frozen<T>(value: T): T {
  if (value !== null && typeof value === 'object' && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const each of Object.values(value)) frozen(each);
  }
  return value;
}

describe('The same request', () => {
  it('gives the same plan, whatever was planned in between, and is not touched', () => {
    const request = frozen(simulatedNight(33_333).request);
    const first = planOf(request);
    planOf({ ...NIGHTS[0]!, options: { ...NIGHTS[0]!.options, seed: 9, scenarios: 32 } });
    expect(planOf(request)).toEqual(first);
  });

  it('gives the same plan alone and in a field of machines', () => {
    const night = NIGHTS[5]!;
    const field = NIGHTS.slice(0, 8).map(({ machine }) => ({ ...night, machine }));
    const mixed = [field[0]!, NIGHTS[7]!, ...field.slice(1), { ...field[1]!, now: clock(18) }];
    expect(planMany(mixed)).toEqual(mixed.map(makePlan));
  });

  it('with its runs in another order gives the same night', () => {
    const request = NIGHTS[3]!;
    const order = [2, 0, 1, ...request.runs.keys()].filter((i, place, all) => all.indexOf(i) === place);
    const mixed = planOf({ ...request, runs: order.map((i) => request.runs[i]!) });
    const plain = planOf(request);
    expect(mixed.order).toEqual(order.map((_, i) => order.indexOf(i)));
    expect({
      ...mixed,
      order: plain.order,
      warnings: mixed.warnings.filter(({ code }) => code !== 'runs-reordered'),
    }).toEqual(plain);
    expect(mixed.warnings).toContainEqual({ code: 'runs-reordered' });
    expect(instant(mixed.sortedRuns[0]!.start)).toBe(request.runs[0]!.start);
  });
});
