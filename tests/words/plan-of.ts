import { airAt } from '@/lib/air/air-from';
import type { Setting } from '@/lib/carb/machine';
import type {
  BySwapCount,
  Crossing,
  Plan,
  PlanHour,
  PlanRequest,
  Run,
  RunPlan,
  Swap,
} from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { type Standing, standingOf } from '@/lib/standing/standing';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { machineOf, requestOf } from '@/tests/support/plan-cases';

/** Plans made by hand: what the words say must not depend on what the planner would choose. */

export const ZONE = 'America/Chicago';
export const at = (iso: string): Instant => expectOk(readInstant(iso));
export const on = (...mains: readonly number[]): Setting => ({ mains, trim: null });
/** Sentences keep a number and its unit together with a space that does not break; tests read it as a plain one. */
export const plain = (sentence: string | null): string => (sentence ?? '').replaceAll('\u00a0', ' ');

export const FIRST_START = at('2027-01-16T19:30:00-06:00');

const air = (celsius: number) =>
  airAt({
    temperature: celsiusToKelvin(celsius),
    pressure: hectopascalToPascal(990),
    relativeHumidity: ratio(0.8),
    pressureFrom: 'station',
  });

/** Round 1 at 19:30 and then one every `every` minutes, ten minutes long. */
export function rounds(count: number, every = 60, first = FIRST_START): readonly Run[] {
  return Array.from({ length: count }, (_, i) => ({
    name: `Round ${i + 1}`,
    start: addMinutes(first, i * every),
    end: addMinutes(first, i * every + 10),
    weight: 1,
    typicalSeconds: null,
  }));
}

export function runOn(run: number, setting: Setting, more: Partial<RunPlan> = {}): RunPlan {
  return {
    run,
    setting,
    air: air(-15),
    givenTemperature: celsiusToKelvin(-15),
    ideal: [411],
    leanest: ratio(0.004),
    richest: ratio(0.012),
    chanceOfLean: ratio(0),
    leanCount: { lean: 0, of: 64 },
    grade: 'good',
    ifKept: { grade: 'good', leanCount: { lean: 0, of: 64 } },
    chanceOfRich: ratio(0),
    reserve: ratio(0.024),
    loss: ratio(0.001),
    relativePower: ratio(1.02),
    state: 'planned',
    ...more,
  };
}

export function hourAt(time: Instant, celsius: number): PlanHour {
  return {
    at: time,
    origin: 'typed',
    from: {
      temperature: { origin: 'typed', by: null },
      pressure: { origin: 'typed', by: null },
      madeAt: null,
    },
    air: air(celsius),
    given: air(celsius),
    temperatureSd: 1,
    ideal: [411],
    idealLow: [408],
    idealHigh: [415],
    baselineDrift: ratio(-0.004),
    baselineState: 'right',
    drift: ratio(0.01),
    chanceOfLean: ratio(0.01),
    leanCount: { lean: 1, of: 64 },
    relativePower: ratio(1.02),
  };
}

export function crossing(time: string, more: Partial<Crossing> = {}): Crossing {
  return {
    at: at(time),
    earliest: addMinutes(at(time), -30),
    latest: addMinutes(at(time), 40),
    to: 'lean',
    ...more,
  };
}

export function swapTo(beforeRun: number, from: Setting, to: Setting, more: Partial<Swap> = {}): Swap {
  return {
    beforeRun,
    from,
    to,
    kind: 'jets',
    windowStart: at('2027-01-16T22:05:00-06:00'),
    latestStart: at('2027-01-16T22:25:00-06:00'),
    readyBy: at('2027-01-16T22:40:00-06:00'),
    reason: { code: 'old-turns-lean', run: beforeRun, count: { lean: 5, of: 64 } },
    ifSkipped: { chanceOfLean: ratio(0.95), count: { lean: 61, of: 64 }, loss: ratio(0.006) },
    ...more,
  };
}

function countOf(swaps: number, runs: readonly RunPlan[], more: Partial<BySwapCount> = {}): BySwapCount {
  return {
    swaps,
    settings: runs.map(({ setting }) => setting),
    leanRunsOverRisk: 0,
    richRuns: 0,
    loss: ratio(0.001),
    secondsLost: null,
    ...more,
  };
}

type PlanParts = Partial<Plan> & { readonly leanRunsOverRisk?: number };

/** A plan of six rounds on the given settings; anything else can be said. */
export function planOf(
  settings: readonly Setting[],
  { leanRunsOverRisk = 0, ...more }: PlanParts = {},
): Plan {
  const runs = more.runs ?? settings.map((setting, run) => runOn(run, setting));
  const swaps = more.swaps ?? [];
  const sortedRuns = more.sortedRuns ?? rounds(settings.length);
  return {
    hours: [hourAt(FIRST_START, -12), hourAt(addMinutes(FIRST_START, 60), -16)],
    crossings: [],
    order: settings.map((_, i) => i),
    stints: [],
    bySwapCount: [countOf(swaps.length, runs, { leanRunsOverRisk })],
    runnerUp: null,
    kept: false,
    warnings: [],
    hoursEnd: at('2027-01-17T03:00:00-06:00'),
    baseline: settings[0] ?? on(410),
    worth: { swap: ratio(0.005), ratedPower: null },
    inNow: { setting: settings[0] ?? on(410), known: 'baseline' },
    ...more,
    runs,
    swaps,
    sortedRuns,
  };
}

/** What is true by a plan half an hour before its first run, with nothing accepted. */
export function standOn(plan: Plan, given: Partial<PlanRequest> = {}): Standing {
  const carburettors = plan.inNow.setting.mains.map((main) => ({ main }));
  const machine = machineOf({ carburettors });
  return standingOf(requestOf({ machine, now: addMinutes(FIRST_START, -30), ...given }), plan);
}

export { countOf };
