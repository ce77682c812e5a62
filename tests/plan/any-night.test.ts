import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import { jetSets } from '@/lib/plan/candidates';
import { makePlan } from '@/lib/plan/make-plan';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { Plan, PlanRequest, Run } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { addMinutes, MINUTE_MS } from '@/lib/time/instant';
import { kelvinDifference, ratio } from '@/lib/units/quantity';
import { clock, DUSK, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';

const run = (name: string, start: number, end: number): Run => ({
  name,
  start: clock(start),
  end: clock(end),
  weight: 1,
  typicalSeconds: null,
});

const anyRun = fc
  .record({
    start: fc.integer({ min: -30, max: 13 * 60 }),
    minutes: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 600 })),
    weight: fc.constantFrom(0, 0.5, 1, 3),
  })
  .map(
    ({ start, minutes, weight }): Run => ({
      name: 'Heat',
      start: addMinutes(DUSK, start),
      end: addMinutes(DUSK, start + minutes),
      weight,
      typicalSeconds: weight === 3 ? 40 : null,
    }),
  );

const anyMachine = fc
  .record({
    mains: fc.array(fc.constantFrom(390, 400, 410, 410, 425), { minLength: 1, maxLength: 4 }),
    box: fc.array(
      fc.record({
        size: fc.constantFrom(360, 380, 390, 400, 410, 420, 430, 460),
        count: fc.integer({ min: 0, max: 4 }),
      }),
      { minLength: 1, maxLength: 10 },
    ),
    trim: fc.constantFrom(null, { lowest: -1, highest: 2, baseline: 0, richerPerPosition: ratio(0.015) }),
    offset: fc.constantFrom(0, 6, 25),
    sure: fc.constantFrom(DEFAULT_RESPONSE, { ...DEFAULT_RESPONSE, pressureSd: 2, temperatureSd: 0.001 }),
    risk: fc.constantFrom(0.001, 0.05, 0.5),
  })
  .map(({ mains, box, trim, offset, sure, risk }) =>
    machineOf({
      carburettors: mains.map((main) => ({ main })),
      box,
      trim,
      response: sure,
      intakeOffset: kelvinDifference(offset),
      baselineIntakeOffset: kelvinDifference(offset),
      limits: { lean: ratio(0.02), rich: ratio(0.05), risk: ratio(risk) },
    }),
  );

const anyRequest = fc
  .record({
    machine: anyMachine,
    runs: fc.array(anyRun, { minLength: 1, maxLength: 8 }),
    celsius: fc.array(fc.integer({ min: -35, max: 30 }), { minLength: 1, maxLength: 16, size: 'max' }),
    now: fc.oneof(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 600 })),
    swapMinutes: fc.constantFrom(0, 15, 45),
    worthIt: fc.constantFrom(0, 0.005, 1),
    oneSetting: fc.boolean(),
  })
  .map(
    ({ machine, runs, celsius, now, swapMinutes, worthIt, oneSetting }): PlanRequest =>
      requestOf({
        machine,
        runs,
        series: seriesOf(celsius),
        now: addMinutes(DUSK, now),
        options: { scenarios: 16, seed: 1, swapMinutes, worthIt: ratio(worthIt), oneSetting },
      }),
  );

/** Every number of a plan, wherever it stands. */
function numbersOf(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : [];
}

function expectFitsBox(plan: Plan, { machine }: PlanRequest): void {
  const owned = new Map<number, number>();
  for (const { size, count } of machine.box) owned.set(size, (owned.get(size) ?? 0) + count);
  const baseline = JSON.stringify(plan.baseline.mains);
  for (const { mains } of plan.runs.map(({ setting }) => setting)) {
    if (JSON.stringify(mains) === baseline) continue;
    for (const size of mains)
      expect(mains.filter((each) => each === size).length).toBeLessThanOrEqual(owned.get(size) ?? 0);
  }
}

/** Swaps lead from what is in to what each run is made on, in time, and never while the engine runs. */
function expectSwapsFit(plan: Plan, { now, options }: PlanRequest): void {
  let setting = plan.runs.findLast(({ state }) => state === 'made')?.setting ?? plan.baseline;
  for (const swap of plan.swaps) {
    expect(swap.from).toEqual(setting);
    setting = swap.to;
    expect(plan.runs[swap.beforeRun]).toMatchObject({ state: 'planned', setting: swap.to });
    const { start } = plan.sortedRuns[swap.beforeRun]!;
    const takes = swap.kind === 'jets' ? options.swapMinutes * MINUTE_MS : 0;
    expect(swap.windowStart).toBeGreaterThanOrEqual(now);
    expect(swap.windowStart + takes).toBeLessThanOrEqual(start);
    expect(swap.latestStart + takes).toBe(start);
    for (const earlier of plan.sortedRuns.slice(0, swap.beforeRun))
      expect(earlier.end).toBeLessThanOrEqual(swap.windowStart);
  }
}

describe('Any night at all', () => {
  it('is refused for a reason, or has a plan that can be carried out', () => {
    let [planned, swaps] = [0, 0];
    fc.assert(
      fc.property(anyRequest, (request) => {
        const answer = makePlan(request);
        if (!answer.ok) {
          const { code } = answer.reason;
          expect(['empty-box', 'too-few-jets', 'hours-do-not-cover-any-run']).toContain(code);
          if (code !== 'hours-do-not-cover-any-run') expect(jetSets(request.machine)).toEqual([]);
          return;
        }
        const plan = answer.value;
        planned += 1;
        swaps += plan.swaps.length;
        expect(plan.runs).toHaveLength(request.runs.length);
        expect(numbersOf(plan).every(Number.isFinite)).toBe(true);
        for (const { chanceOfLean, chanceOfRich, loss } of plan.runs)
          expect([chanceOfLean, chanceOfRich, loss].every((each) => each >= 0 && each <= 1)).toBe(true);
        expectFitsBox(plan, request);
        expectSwapsFit(plan, request);
        const counts = plan.bySwapCount.map((each) => each.swaps);
        expect(counts).toEqual([...new Set(counts)].sort((a, b) => a - b));
      }),
      { seed: 7, numRuns: 250 },
    );
    expect(planned).toBeGreaterThan(100);
    expect(swaps).toBeGreaterThan(50);
  });

  it('keeps its own plan when it is asked again with that plan accepted', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const first = makePlan(request);
        if (!first.ok) return;
        const accepted = settingsAsGiven(first.value);
        const again = expectOk(makePlan({ ...request, accepted }));
        const open = ({ runs }: Plan) =>
          runs.filter(({ state }) => state === 'planned').map((each) => each.setting);
        expect(open(again)).toEqual(open(first.value));
        expect(again.swaps).toEqual(first.value.swaps);
      }),
      { seed: 8, numRuns: 120 },
    );
  });
});

describe('At the edges of a night', () => {
  const planOf = (given: Partial<PlanRequest>): Plan => expectOk(makePlan(requestOf(given)));
  const falling = seriesOf([-4, -6, -9, -12, -15, -18, -21, -24, -27]);

  it('nothing is swapped between runs that touch, however cold it gets', () => {
    const runs = [run('A', 18, 20), run('B', 20, 22), run('C', 22, 24)];
    const options = { ...DEFAULT_OPTIONS, worthIt: ratio(0) };
    const plan = planOf({ runs, series: falling, options });
    expect(new Set(plan.runs.map(({ setting }) => setting.mains[0])).size).toBe(1);
    expect(plan.warnings.map(({ code }) => code)).not.toContain('runs-overlap');
    const apart = planOf({
      runs: [runs[0]!, { ...runs[1]!, start: addMinutes(clock(20), 15) }, runs[2]!],
      options,
      series: falling,
    });
    expect(apart.swaps.map(({ beforeRun }) => beforeRun)).toContain(1);
  });

  it('a run of thirty hours has one setting, safe for its coldest hour', () => {
    const celsius = Array.from({ length: 37 }, (_, i) => -8 - 9 * Math.sin(((i - 6) / 24) * 2 * Math.PI));
    const plan = planOf({ runs: [run('Endurance', 18, 48)], series: seriesOf(celsius) });
    expect(plan.runs[0]).toMatchObject({ state: 'planned' });
    const coldest = planOf({ runs: [run('Heat', 29, 29)], series: seriesOf(celsius) });
    expect(plan.runs[0]!.setting.mains[0]).toBeGreaterThanOrEqual(coldest.runs[0]!.setting.mains[0]!);
    expect(plan.runs[0]!.chanceOfLean).toBeLessThanOrEqual(0.05);
    expect(plan.runs[0]!.chanceOfLean).toBeGreaterThanOrEqual(
      planOf({
        runs: [run('Heat', 29, 29)],
        series: seriesOf(celsius),
        fitted: plan.runs[0]!.setting,
        now: clock(29),
      }).runs[0]!.chanceOfLean,
    );
  });

  it('a run that the hours leave half way is not planned, and the one before it is', () => {
    const plan = planOf({ runs: [run('A', 19, 19.2), run('B', 24.5, 25.5)], series: falling });
    expect(plan.runs.map(({ state }) => state)).toEqual(['planned', 'beyond-hours']);
    expect(plan.swaps.every(({ beforeRun }) => beforeRun === 0)).toBe(true);
    expect(plan.warnings).toContainEqual({ code: 'run-beyond-hours', run: 1, hoursEnd: clock(25) });
  });

  it('one jet in the box is the plan, and what it lacks is said', () => {
    const runs = runsOf({ first: 18, every: 60, count: 6 });
    const only = { box: [{ size: 410, count: 1 }] };
    const plan = planOf({ machine: machineOf(only), runs, series: falling });
    expect(new Set(plan.runs.map(({ setting }) => setting.mains[0]))).toEqual(new Set([410]));
    expect([plan.swaps, plan.runnerUp, plan.bySwapCount.length]).toEqual([[], null, 1]);
    expect(plan.warnings.map(({ code }) => code)).toContain('no-jet-rich-enough');
  });

  it('the same jet listed twice is one jet with the counts of both', () => {
    const twin = [{ main: 410 }, { main: 410 }];
    const once = machineOf({ carburettors: twin, box: [410, 420, 430].map((size) => ({ size, count: 2 })) });
    const twice = { ...once, box: [...once.box, ...once.box].map(({ size }) => ({ size, count: 1 })) };
    expect(makePlan(requestOf({ machine: twice }))).toEqual(makePlan(requestOf({ machine: once })));
  });

  it('a size with one piece for two carburettors is used beside another, never doubled', () => {
    const machine = machineOf({
      carburettors: [{ main: 410 }, { main: 410 }],
      box: [
        { size: 410, count: 2 },
        { size: 420, count: 1 },
        { size: 430, count: 1 },
      ],
    });
    const plan = planOf({ machine, series: falling, runs: runsOf({ first: 18, every: 60, count: 6 }) });
    const sets = new Set(plan.runs.map(({ setting }) => [...setting.mains].sort().join('/')));
    expect(sets).not.toContain('420/420');
    expect(sets).not.toContain('430/430');
    expect([...sets].some((set) => set === '420/430')).toBe(true);
  });
});
