import type { SeriesSource } from '@/lib/hours/series';
import type { BySwapCount, Crossing, Plan, PlanHour, RunPlan, Swap, SwapReason } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { airAnswer } from './air-answer';
import type { CrossingAnswer, PlanAnswer } from './plan-answer';
import { type StandingTexts, settingJson, standingAnswer } from './standing-to-json';

/** What a plan does not know itself and its answer says. */
export type PlanWords = {
  readonly machine: string;
  readonly zone: string;
  readonly now: Instant;
  readonly source: SeriesSource;
  readonly call: string;
  readonly standing: StandingTexts;
  readonly swapWords: readonly string[];
  /** Where each hour comes from. */
  readonly hourWords: readonly string[];
  readonly warnings: readonly { readonly code: string; readonly message: string }[];
};

type Write = (at: Instant) => string;

const percent = (value: number): number => value * 100;

/** A plan as JSON: percent where the name says so, times with the offset of the event's zone, nothing rounded. */
export function planAnswer(standing: Standing, words: PlanWords): PlanAnswer {
  const { plan } = standing;
  const write: Write = (at) => isoLocal(at, words.zone);
  return {
    machine: words.machine,
    call: words.call,
    standing: standingAnswer(standing, words.standing, write),
    now: write(words.now),
    source: sourceAnswer(words.source, write),
    hours: plan.hours.map((hour, i) => hourAnswer(hour, write, words.hourWords[i] ?? '')),
    crossings: plan.crossings.map((crossing) => crossingAnswer(crossing, write)),
    runs: plan.runs.map((run) => runAnswer(run, plan, write)),
    stints: plan.stints.map(({ setting, firstRun, lastRun }) => ({
      setting: settingJson(setting),
      firstRun,
      lastRun,
    })),
    swaps: plan.swaps.map((swap, i) => swapAnswer(swap, write, words.swapWords[i] ?? '')),
    bySwapCount: plan.bySwapCount.map(bySwapCountAnswer),
    swapWorthPercent: percent(plan.worth.swap),
    runnerUp:
      plan.runnerUp === null
        ? null
        : { settings: plan.runnerUp.settings.map(settingJson), marginPercent: percent(plan.runnerUp.margin) },
    kept: plan.kept,
    hoursEnd: write(plan.hoursEnd),
    baseline: settingJson(plan.baseline),
    warnings: [...words.warnings],
  };
}

function sourceAnswer(source: SeriesSource, write: Write): PlanAnswer['source'] {
  const { name, attribution, attributionUrl, issuedAt, fetchedAt } = source;
  return {
    name,
    attribution,
    attributionUrl,
    issuedAt: issuedAt === null ? null : write(issuedAt),
    fetchedAt: fetchedAt === null ? null : write(fetchedAt),
  };
}

function hourAnswer(hour: PlanHour, write: Write, words: string): PlanAnswer['hours'][number] {
  const { temperature, pressure, madeAt } = hour.from;
  return {
    time: write(hour.at),
    origin: hour.origin,
    source: {
      temperatureBy: temperature.by,
      pressureBy: pressure === 'standard' ? null : pressure.by,
      pressureIsEstimate: pressure === 'standard',
      madeAt: madeAt === null ? null : write(madeAt),
      words,
    },
    air: airAnswer(hour.air),
    given: {
      temperatureC: kelvinToCelsius(hour.given.temperature),
      stationPressureHpa: pascalToHectopascal(hour.given.pressure),
      relativeHumidity: hour.given.relativeHumidity,
    },
    temperatureSdC: hour.temperatureSd,
    ideal: [...hour.ideal],
    idealLow: [...hour.idealLow],
    idealHigh: [...hour.idealHigh],
    baselineDriftPercent: percent(hour.baselineDrift),
    baselineState: hour.baselineState,
    driftPercent: percent(hour.drift),
    chanceOfLean: hour.chanceOfLean,
    relativePower: hour.relativePower,
  };
}

function crossingAnswer({ at, earliest, latest, to }: Crossing, write: Write): CrossingAnswer {
  return { time: write(at), earliest: write(earliest), latest: latest === null ? null : write(latest), to };
}

function runAnswer(run: RunPlan, plan: Plan, write: Write): PlanAnswer['runs'][number] {
  const sorted = plan.sortedRuns[run.run];
  if (sorted === undefined) throw new Error(`plan names run ${run.run}, which it does not hold`);
  return {
    name: sorted.name,
    start: write(sorted.start),
    end: write(sorted.end),
    sentRun: plan.order[run.run] ?? run.run,
    state: run.state,
    grade: run.grade,
    ifKept: { grade: run.ifKept.grade, leanCount: { ...run.ifKept.leanCount } },
    setting: settingJson(run.setting),
    air: airAnswer(run.air),
    givenTemperatureC: kelvinToCelsius(run.givenTemperature),
    ideal: [...run.ideal],
    leanestPercent: percent(run.leanest),
    richestPercent: percent(run.richest),
    reservePercent: percent(run.reserve),
    chanceOfLean: run.chanceOfLean,
    leanCount: { ...run.leanCount },
    chanceOfRich: run.chanceOfRich,
    lossPercent: percent(run.loss),
    relativePower: run.relativePower,
  };
}

function reasonAnswer(reason: SwapReason): PlanAnswer['swaps'][number]['reason'] {
  return {
    code: reason.code,
    ...('run' in reason ? { run: reason.run } : {}),
    ...('count' in reason ? { leanCount: { ...reason.count } } : {}),
    ...('gain' in reason ? { gainPercent: percent(reason.gain) } : {}),
  };
}

function swapAnswer(swap: Swap, write: Write, words: string): PlanAnswer['swaps'][number] {
  return {
    beforeRun: swap.beforeRun,
    from: settingJson(swap.from),
    to: settingJson(swap.to),
    kind: swap.kind,
    windowStart: write(swap.windowStart),
    latestStart: write(swap.latestStart),
    readyBy: write(swap.readyBy),
    reason: reasonAnswer(swap.reason),
    ifSkipped: {
      chanceOfLean: swap.ifSkipped.chanceOfLean,
      leanCount: { ...swap.ifSkipped.count },
      lossPercent: percent(swap.ifSkipped.loss),
    },
    words,
  };
}

function bySwapCountAnswer(entry: BySwapCount): PlanAnswer['bySwapCount'][number] {
  return {
    swaps: entry.swaps,
    settings: entry.settings.map(settingJson),
    leanRunsOverRisk: entry.leanRunsOverRisk,
    richRuns: entry.richRuns,
    lossPercent: percent(entry.loss),
    secondsLost: entry.secondsLost,
  };
}
