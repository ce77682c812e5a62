import { describe, expect, it } from 'vitest';
import { logIdealArea } from '@/lib/carb/response';
import { fillShortGaps } from '@/lib/hours/gaps';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { Plan, PlanRequest, PlanWarning, Run } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, ratio } from '@/lib/units/quantity';
import {
  COLD_NIGHT,
  clock,
  DUSK,
  hour,
  machineOf,
  requestOf,
  runsOf,
  seriesOf,
} from '@/tests/support/plan-cases';

function planOf(given: Partial<PlanRequest> = {}): Plan {
  return expectOk(makePlan(requestOf(given)));
}

/** The plan as a picture: the first carburettor's jet of every run, a bar before each swap. */
function drawn(plan: Plan): string {
  return plan.runs
    .map(({ run, setting, state }) => {
      const bar = plan.swaps.some(({ beforeRun, kind }) => beforeRun === run && kind === 'jets') ? '|' : '';
      const trim = setting.trim === null ? '' : `/${setting.trim}`;
      return bar + (state === 'beyond-hours' ? '?' : setting.mains[0] + trim);
    })
    .join(' ');
}

function codes(plan: Plan): readonly PlanWarning['code'][] {
  return plan.warnings.map(({ code }) => code);
}

function withOptions(options: Partial<PlanRequest['options']>): Pick<PlanRequest, 'options'> {
  return { options: { ...requestOf().options, ...options } };
}

const FEW = [400, 410, 420, 430].map((size) => ({ size, count: 1 }));

describe('A cooling night', () => {
  const plan = planOf();

  it('starts on the jet that is right, goes up a size as it cools, and never swaps without need', () => {
    expect(drawn(plan)).toBe('410 410 410 |420 420 420 420 420 420 |430 430 430');
    expect(
      plan.stints.map(({ setting, firstRun, lastRun }) => [setting.mains[0], firstRun, lastRun]),
    ).toEqual([
      [410, 0, 2],
      [420, 3, 8],
      [430, 9, 11],
    ]);
  });

  it('gives each swap its window, its reason and what skipping it means', () => {
    const [first] = plan.swaps;
    expect(first).toMatchObject({
      beforeRun: 3,
      kind: 'jets',
      windowStart: plan.sortedRuns[2]!.end,
      latestStart: addMinutes(plan.sortedRuns[3]!.start, -15),
      reason: { code: 'old-turns-lean' },
    });
    expect(first!.readyBy).toBe(plan.sortedRuns[3]!.start);
    expect(first!.reason).toMatchObject({ run: 3 });
    expect(first!.ifSkipped.chanceOfLean).toBeGreaterThan(0.5);
  });

  it('keeps every run within the limits and says how far it stands from them', () => {
    for (const run of plan.runs) {
      expect(run.chanceOfLean).toBeLessThanOrEqual(0.05);
      expect(run.reserve).toBeCloseTo(run.leanest + 0.02, 12);
      expect(run.reserve).toBeGreaterThan(0);
      expect(run.leanCount.of).toBe(64);
      // Rounded, and at most one further to stay on its side of the limit.
      expect(Math.abs(run.leanCount.lean - 64 * run.chanceOfLean)).toBeLessThan(1);
    }
    expect(plan.warnings).toEqual([]);
  });

  it('shows the baseline hour by hour as the carburettor model has it, with its crossings', () => {
    for (const each of plan.hours) {
      expect(each.baselineDrift).toBeCloseTo(Math.expm1(-logIdealArea(machineOf(), each.air)), 6);
      expect(each.ideal[0]).toBeCloseTo(410 / (1 + each.baselineDrift), 6);
      expect(each.idealLow[0]).toBeLessThan(each.ideal[0]!);
      expect(each.idealHigh[0]).toBeGreaterThan(each.ideal[0]!);
    }
    expect(plan.crossings.map(({ to }) => to)).toEqual(['lean', 'right']);
    expect(plan.hours.map(({ baselineState }) => baselineState).filter((state) => state === 'rich')).toEqual(
      [],
    );
  });

  it('prices one swap less, and names a runner-up that is worse', () => {
    const [none, one, two] = plan.bySwapCount;
    expect([none?.swaps, one?.swaps, two?.swaps]).toEqual([0, 1, 2]);
    expect(none!.leanRunsOverRisk).toBeGreaterThan(0);
    expect(one!.leanRunsOverRisk).toBe(0);
    expect(two!.loss).toBeLessThan(one!.loss);
    expect(two!.secondsLost).toBeNull();
    expect(plan.runnerUp!.margin).toBeGreaterThan(0);
    expect(plan.runnerUp!.settings).not.toEqual(plan.runs.map(({ setting }) => setting));
  });

  it('puts seconds to the power where runs are timed: 60 s at 1 % less power are 0.2 s more', () => {
    const runs = requestOf().runs.map((run) => ({ ...run, typicalSeconds: 60 }));
    const [, one, two] = planOf({ runs }).bySwapCount;
    const seconds = (loss: number) => 60 * ((1 - loss) ** (-1 / 3) - 1);
    // Losses differ from run to run; the third root is straight enough over half a percent for their mean to do.
    expect(one!.secondsLost!).toBeCloseTo(12 * seconds(one!.loss), 3);
    expect(two!.secondsLost!).toBeLessThan(one!.secondsLost!);
  });
});

describe('A steady night', () => {
  it('has no swap at all, and says so by having none', () => {
    const plan = planOf({ series: seriesOf(new Array<number>(17).fill(-6)) });
    expect(drawn(plan)).toBe(new Array(12).fill('410').join(' '));
    expect([plan.swaps, plan.crossings]).toEqual([[], []]);
  });
});

describe('What is fitted', () => {
  it('is where the plan starts: a wrong jet is changed before the first run, straight to one that lasts', () => {
    const plan = planOf({ fitted: { mains: [380], trim: null } });
    expect(drawn(plan)).toBe('|420 420 420 420 420 420 420 420 420 |430 430 430');
    expect(plan.swaps[0]).toMatchObject({
      beforeRun: 0,
      from: { mains: [380] },
      windowStart: DUSK,
      latestStart: addMinutes(clock(18), -15),
    });
  });

  it('stays in where there is no time before the first run, and the plan says what that means', () => {
    const plan = planOf({ fitted: { mains: [380], trim: null }, now: clock(17.9) });
    expect(plan.runs[0]!.setting.mains).toEqual([380]);
    expect(plan.warnings).toContainEqual({
      code: 'swap-does-not-fit',
      run: 0,
      gapMinutes: expect.closeTo(6, 6),
      swapMinutes: 15,
    });
    expect(plan.swaps[0]!.beforeRun).toBe(1);
  });

  it('may be a jet that the box does not hold', () => {
    const plan = planOf({
      machine: machineOf({ box: FEW, carburettors: [{ main: 405 }] }),
      fitted: { mains: [412.5], trim: null },
    });
    expect(plan.runs[0]!.setting.mains).toEqual([412.5]);
    expect(plan.warnings).toContainEqual({ code: 'baseline-jet-not-in-box', size: 405 });
  });
});

describe('A trim that is turned from outside', () => {
  const trim = { lowest: 1, highest: 9, baseline: 3, richerPerPosition: ratio(0.012) };

  it('is used before jets are swapped, and free of the swap window', () => {
    const plan = planOf({ machine: machineOf({ trim }) });
    expect(plan.swaps.length).toBeGreaterThan(0);
    expect(plan.swaps.every(({ kind }) => kind === 'trim')).toBe(true);
    expect(plan.swaps[0]!.latestStart).toBe(plan.sortedRuns[plan.swaps[0]!.beforeRun]!.start);
    expect(drawn(plan).startsWith('410/')).toBe(true);
  });

  it('fits where a swap does not', () => {
    const tight = planOf({ machine: machineOf({ trim }), runs: runsOf({ first: 18, every: 20, count: 24 }) });
    expect(tight.swaps.every(({ kind }) => kind === 'trim')).toBe(true);
    expect(codes(tight)).toEqual([]);
  });
});

describe('A ride', () => {
  const ride: readonly Run[] = [
    { name: 'Loop', start: clock(19), end: clock(27), weight: 1, typicalSeconds: null },
  ];

  it('has one setting, safe for its coldest hour', () => {
    const plan = planOf({ runs: ride });
    expect(drawn(plan)).toBe('|430');
    expect(plan.runs[0]!.chanceOfLean).toBeLessThanOrEqual(0.05);
    expect(plan.runs[0]!.leanest).toBeCloseTo(
      Math.min(...plan.hours.slice(2, 11).map(({ drift }) => drift)),
      2,
    );
  });

  it('in several legs keeps its setting where the machine has no stop to swap in', () => {
    const legs = planOf({
      runs: runsOf({ first: 18, every: 120, count: 5 }),
      ...withOptions({ oneSetting: true }),
    });
    expect(new Set(legs.runs.map(({ setting }) => setting.mains[0])).size).toBe(1);
    expect(legs.bySwapCount.at(-1)!.swaps).toBeLessThanOrEqual(1);
  });
});

describe('A box that cannot do it', () => {
  it('says loudly which sizes are missing, uses the richest and plans on', () => {
    const plan = planOf({ machine: machineOf({ box: [400, 410].map((size) => ({ size, count: 1 })) }) });
    const short = plan.warnings.filter((warning) => warning.code === 'no-jet-rich-enough');
    expect(short.map(({ run }) => run)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11]);
    // The steps of the box are tens: what is asked for is a jet that exists.
    expect(short[0]!.sizes).toEqual([420]);
    expect(drawn(plan)).toBe(new Array(12).fill('410').join(' '));
    const enough = planOf({
      machine: machineOf({
        box: [400, 410, Math.max(...short.map(({ sizes }) => sizes?.[0] ?? 0))].map((size) => ({
          size,
          count: 1,
        })),
      }),
    });
    expect(codes(enough)).toEqual([]);
  });

  it('says when even the leanest safe jet is too rich', () => {
    const plan = planOf({
      machine: machineOf({ box: [{ size: 460, count: 1 }] }),
      fitted: { mains: [460], trim: null },
      series: seriesOf(new Array<number>(17).fill(0)),
    });
    expect(codes(plan)).toContain('no-jet-lean-enough');
    expect(plan.runs[0]!.chanceOfRich).toBeGreaterThan(0.9);
  });

  it('is refused where nothing can be fitted at all', () => {
    const triple = { carburettors: [410, 410, 410].map((main) => ({ main })) };
    expect(makePlan(requestOf({ machine: machineOf({ box: [] }) }))).toEqual({
      ok: false,
      reason: { code: 'empty-box' },
    });
    expect(makePlan(requestOf({ machine: machineOf({ box: [{ size: 410, count: 0 }] }) }))).toMatchObject({
      reason: { code: 'empty-box' },
    });
    expect(
      makePlan(requestOf({ machine: machineOf({ ...triple, box: [{ size: 410, count: 2 }] }) })),
    ).toEqual({ ok: false, reason: { code: 'too-few-jets', carburettors: 3 } });
    const owned = { ...triple, box: [{ size: 410, count: 3 }] };
    expect(makePlan(requestOf({ machine: machineOf(owned), fitted: { mains: [410], trim: null } }))).toEqual({
      ok: false,
      reason: { code: 'setting-does-not-fit', mains: 1, carburettors: 3 },
    });
  });
});

describe('Runs and hours that do not fit together', () => {
  it('are planned as far as the hours go, and the rest is said to be beyond', () => {
    const plan = planOf({ series: { ...COLD_NIGHT, hours: COLD_NIGHT.hours.slice(0, 5) } });
    expect(drawn(plan)).toBe('410 410 410 |420 420 ? ? ? ? ? ? ?');
    expect(plan.hoursEnd).toBe(clock(21));
    expect(codes(plan)).toEqual(new Array(7).fill('run-beyond-hours'));
    expect(plan.stints.at(-1)!.lastRun).toBe(4);
  });

  it('before the first hour are said to be before it', () => {
    const plan = planOf({ series: { ...COLD_NIGHT, hours: COLD_NIGHT.hours.slice(3) } });
    expect(plan.runs.map(({ state }) => state).slice(0, 4)).toEqual([
      'beyond-hours',
      'beyond-hours',
      'beyond-hours',
      'planned',
    ]);
    expect(codes(plan)).toEqual(new Array(3).fill('run-before-hours'));
  });

  it.each<[string, Partial<PlanRequest>, string]>([
    ['no run', { runs: [] }, 'no-runs'],
    ['no hour', { series: seriesOf([]) }, 'no-hours'],
    [
      'hours of another day',
      { runs: runsOf({ first: 60, every: 30, count: 3 }) },
      'hours-do-not-cover-any-run',
    ],
    ['61 runs', { runs: runsOf({ first: 18, every: 5, count: 61 }) }, 'too-many-runs'],
    [
      'a run that ends before it starts',
      { runs: [{ ...runsOf({ first: 23.5, every: 1, count: 1 })[0]!, end: clock(0.2) }] },
      'run-ends-before-it-starts',
    ],
  ])('with %s are refused with a reason', (_, given, code) => {
    expect(makePlan(requestOf(given))).toMatchObject({ ok: false, reason: { code } });
  });

  it('overlap: nothing is changed in between, and the plan says which two', () => {
    const runs = runsOf({ first: 18, every: 60, count: 6 }).map((run, i) =>
      i === 2 ? { ...run, end: addMinutes(run.end, 120) } : run,
    );
    const plan = planOf({ runs });
    expect(plan.warnings.filter(({ code }) => code === 'runs-overlap')).toEqual([
      { code: 'runs-overlap', run: 3, other: 2 },
      { code: 'runs-overlap', run: 4, other: 2 },
    ]);
    expect(plan.runs[2]!.setting).toEqual(plan.runs[4]!.setting);
    expect(plan.runs[2]!.setting.mains[0]).toBe(420);
  });

  it('around a gap in the hours are planned with a word about the gap', () => {
    const hours = COLD_NIGHT.hours.filter((_, i) => i < 3 || i > 7);
    const plan = planOf({ series: { ...COLD_NIGHT, hours } });
    const warning = { code: 'gap-in-hours', from: clock(19), to: clock(25) };
    expect(plan.warnings).toEqual([warning]);
    const filled = fillShortGaps({ ...COLD_NIGHT, hours }).series;
    expect(filled.hours).toHaveLength(COLD_NIGHT.hours.length);
    expect(planOf({ series: filled }).warnings).toEqual([warning]);
  });

  it('on the standard atmosphere say that pressure is an estimate, until a barometer is read', () => {
    const series = seriesOf(
      COLD_NIGHT.hours.map(({ temperature }) => temperature - 273.15),
      { pressureFrom: 'standard' },
    );
    expect(codes(planOf({ series }))).toContain('pressure-is-estimate');
    const read = {
      id: 'r',
      at: clock(17.5),
      temperature: celsiusToKelvin(-5),
      stationPressure: hectopascalToPascal(984),
      relativeHumidity: null,
    };
    const plan = planOf({ series, readings: [read] });
    expect(codes(plan)).not.toContain('pressure-is-estimate');
    expect(plan.hours[3]!.air.pressure).toBeCloseTo(98_400, -2);
  });

  it('far from the air of the baseline say so', () => {
    const series = seriesOf(
      COLD_NIGHT.hours.map(({ temperature }) => temperature - 273.15),
      { pressure: hectopascalToPascal(780) },
    );
    expect(
      codes(
        planOf({
          series,
          machine: machineOf({ box: [300, 320, 340, 360, 380].map((size) => ({ size, count: 1 })) }),
        }),
      ),
    ).toContain('far-from-baseline-air');
  });

  it('cross midnight like any other hour', () => {
    const late = planOf({ runs: runsOf({ first: 23.25, every: 45, count: 4 }) });
    expect(late.sortedRuns.map(({ start }) => new Date(start).getUTCDate())).toEqual([16, 17, 17, 17]);
    expect(late.runs.every(({ state }) => state === 'planned')).toBe(true);
  });

  it('may be a single hour and an instant', () => {
    const plan = planOf({
      series: { ...COLD_NIGHT, hours: [hour(clock(18), -6)] },
      runs: [{ ...runsOf({ first: 18, every: 1, count: 1 })[0]!, end: clock(18) }],
    });
    expect(drawn(plan)).toBe('410');
    expect(plan.crossings).toEqual([]);
  });
});

describe('A night under way', () => {
  it('never touches runs that are made, with what they were made', () => {
    const made = [
      { run: 0, setting: { mains: [430], trim: null } },
      { run: 1, setting: { mains: [420], trim: null } },
    ];
    const plan = planOf({ made, now: clock(19) });
    expect(plan.runs.slice(0, 2).map(({ setting, state }) => [setting.mains[0], state])).toEqual([
      [430, 'made'],
      [420, 'made'],
    ]);
    expect(plan.runs[2]!.setting.mains).toEqual([420]);
    expect(plan.swaps.every(({ beforeRun }) => beforeRun >= 2)).toBe(true);
  });

  it('does not take for made what was accepted and never told: it plans from what was said to be in', () => {
    const accepted = settingsAsGiven(planOf());
    const plan = planOf({ accepted, now: clock(20.1) });
    expect(accepted[3]!.mains).toEqual([420]);
    expect(plan.runs[3]).toMatchObject({ state: 'past', setting: { mains: [410] } });
    expect(plan.inNow).toMatchObject({ setting: { mains: [410] }, known: 'baseline' });
    // The swap that was missed comes first again, in the next gap that is long enough.
    expect(plan.swaps[0]).toMatchObject({ beforeRun: 4, from: { mains: [410] } });
  });

  it('goes by what was said to be in at the time, and by nothing that was said later', () => {
    const on = (main: number) => ({ mains: [main], trim: null });
    const fittings = [
      { at: clock(17.5), setting: on(420) },
      { at: clock(19.2), setting: on(430) },
    ];
    const plan = planOf({ fittings, fitted: on(430), now: clock(19.5) });
    expect(plan.runs.slice(0, 3).map(({ setting, state }) => [setting.mains[0], state])).toEqual([
      [420, 'past'],
      [420, 'past'],
      [430, 'past'],
    ]);
    expect(plan.inNow).toEqual({ setting: on(430), known: 'told' });
  });

  it('is still a picture when all runs are past', () => {
    const plan = planOf({ now: clock(30) });
    expect(plan.runs.every(({ state }) => state === 'past')).toBe(true);
    expect([plan.swaps, plan.bySwapCount, plan.runnerUp]).toEqual([[], [], null]);
    expect(plan.hours.length).toBe(17);
  });

  it('follows a reading: colder than forecast brings the swap forward', () => {
    const read = {
      id: 'r',
      at: clock(18.2),
      temperature: celsiusToKelvin(-10.5),
      stationPressure: null,
      relativeHumidity: null,
    };
    const [before, after] = [planOf({ now: clock(18.3) }), planOf({ now: clock(18.3), readings: [read] })];
    expect(after.swaps[0]!.beforeRun).toBeLessThan(before.swaps[0]!.beforeRun);
    expect(after.hours[2]!.temperatureSd).toBeLessThan(before.hours[2]!.temperatureSd);
  });
});

describe('An accepted plan', () => {
  const free = planOf();
  const later = settingsAsGiven(free).map((setting, i) => (i === 3 ? { mains: [430], trim: null } : setting));

  it('is kept while a fresh one is only a little better', () => {
    const warm = seriesOf(COLD_NIGHT.hours.map(({ temperature }) => temperature - 273.15 + 0.2));
    const fresh = planOf({ series: warm });
    const kept = planOf({ series: warm, accepted: settingsAsGiven(free) });
    expect(drawn(kept)).toBe(drawn(free));
    expect(kept.kept).toBe(drawn(fresh) !== drawn(free));
  });

  it('is dropped for one that is clearly better, lean above the limit above all', () => {
    const lean = settingsAsGiven(free).map(() => ({ mains: [410], trim: null }));
    const plan = planOf({ accepted: lean });
    // One run earlier on 430 than a plan made from nothing: whoever has a plan gets a new one with room to spare.
    expect(drawn(free)).toBe('410 410 410 |420 420 420 420 420 420 |430 430 430');
    expect([drawn(plan), plan.kept]).toEqual(['410 410 410 |420 420 420 420 420 420 |430 430 430', false]);
    expect(planOf({ accepted: later }).kept).toBe(false);
  });

  it('is dropped where a jet of it is gone from the box, or its swap no longer fits', () => {
    const box = machineOf().box.filter(({ size }) => size !== 420);
    expect(planOf({ machine: machineOf({ box }), accepted: settingsAsGiven(free) }).kept).toBe(false);
    const tight = planOf({
      accepted: settingsAsGiven(free),
      runs: runsOf({ first: 18, every: 20, count: 12 }),
    });
    expect(tight.kept).toBe(false);
  });
});

describe('A machine of its own kind', () => {
  it('with staggered carburettors keeps the stagger', () => {
    const box = Array.from({ length: 10 }, (_, i) => ({ size: 370 + 10 * i, count: 3 }));
    const plan = planOf({
      machine: machineOf({
        carburettors: [410, 400, 410].map((main) => ({ main })),
        box,
        swapWorth: ratio(0.005),
      }),
    });
    expect(
      plan.runs.map(({ setting }) => setting.mains.join(' ')).filter((mains, i, all) => mains !== all[i - 1]),
    ).toEqual(['410 400 410', '420 410 420', '430 420 430']);
  });

  it('with a warm airbox needs the same jets where the baseline was proven in it', () => {
    const warm = machineOf({
      intakeOffset: kelvinDifference(20),
      baselineIntakeOffset: kelvinDifference(20),
    });
    const ideal = (plan: Plan) => plan.hours[8]!.ideal[0]!;
    expect(Math.abs(ideal(planOf({ machine: warm })) - ideal(planOf()))).toBeLessThan(1.5);
    const now = machineOf({ intakeOffset: kelvinDifference(20) });
    expect(ideal(planOf({ machine: now }))).toBeLessThan(ideal(planOf()) - 5);
  });

  it('with cold fuel of its own follows the carburettor model', () => {
    const machine = machineOf({ fuelDensity: { offset: kelvinDifference(5), baselineTemperature: 288.15 } });
    const plan = planOf({ machine });
    for (const each of plan.hours)
      expect(each.baselineDrift).toBeCloseTo(Math.expm1(-logIdealArea(machine, each.air)), 6);
  });
});
