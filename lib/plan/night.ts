import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import { intakeAir } from '@/lib/carb/intake';
import { provenanceOf } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import {
  type Kelvin,
  type KelvinDifference,
  kelvin,
  kelvinDifference,
  pascal,
  ratio,
} from '@/lib/units/quantity';
import { STEP_MINUTES } from './judgement';
import { type NeedCurve, needCurve } from './need-curve';
import { type Coverage, nightWarnings, type WarnedNight } from './night-warnings';
import { correctHours, type Track } from './readings';
import { airDraws, coldest, type DrawnWindow } from './scenarios';
import { keptNormals, type Normals } from './stratified';
import type { PlanHour, PlanRequest, PlanWarning, Run } from './types';

/** The part of a request that is the same for every machine at the event. */
export type NightRequest = Pick<PlanRequest, 'runs' | 'series' | 'readings' | 'now' | 'placeOffset'> & {
  readonly options: Pick<PlanRequest['options'], 'scenarios' | 'seed'>;
};

type HourTold = Pick<PlanHour, 'from' | 'given'>;

/** Sorted runs with the weather of each, readings heard, paths drawn: everything but the machine. */
export type PreparedNight = WarnedNight & {
  readonly normals: Normals;
  /** One for each sorted run; for a run the hours do not cover, the nearest hour. */
  readonly windows: readonly DrawnWindow[];
  readonly runAirs: readonly Air[];
  /** Temperature of the hours in the middle of each sorted run, before any reading. */
  readonly runGiven: readonly Kelvin[];
  readonly hours: Track;
  readonly hourAirs: readonly Air[];
  /** Each hour as it was told, and by whom. */
  readonly hoursTold: readonly HourTold[];
  /** What is to be said about the hours and the runs, whatever the machine. */
  readonly warnings: readonly PlanWarning[];
  /** The whole night in even steps. */
  readonly grid: Track;
  /** The night as a carburettor with this intake breathes it. */
  readonly breathe: (offset: KelvinDifference) => Breathed;
};

/** The need of every stretch at one intake offset. */
export type Breathed = {
  readonly windows: readonly NeedCurve[];
  readonly hours: NeedCurve;
  readonly grid: NeedCurve;
  /** Air at the carburettor. */
  readonly hourAirs: readonly Air[];
  readonly runAirs: readonly Air[];
};

/** Order of the runs by start, then by end, then as given. */
export function orderOfRuns(runs: readonly Run[]): readonly number[] {
  return runs
    .map((_, i) => i)
    .sort((a, b) => runs[a]!.start - runs[b]!.start || runs[a]!.end - runs[b]!.end || a - b);
}

/** From start to end in steps, the end included. */
function steps(from: Instant, to: Instant): Float64Array {
  const width = STEP_MINUTES * MINUTE_MS;
  const inner = Math.ceil((to - from) / width);
  const instants = new Float64Array(inner + 1);
  for (let i = 0; i < inner; i++) instants[i] = from + i * width;
  instants[inner] = to;
  return instants;
}

/** From start to end in steps of one length, no longer than the others. */
function evenSteps(from: Instant, to: Instant): Float64Array {
  const count = Math.ceil((to - from) / (STEP_MINUTES * MINUTE_MS));
  const instants = new Float64Array(count + 1);
  for (let i = 0; i <= count; i++) instants[i] = to - ((to - from) * (count - i)) / (count || 1);
  return instants;
}

function coverageOf(run: Run, series: HourSeries): Coverage {
  if (run.start < series.hours[0]!.at) return 'before';
  return run.end > series.hours.at(-1)!.at ? 'after' : 'covered';
}

function windowOf(track: Track, normals: Normals): DrawnWindow {
  const centre = coldest(track);
  return { track, centre, draws: airDraws(track, normals, centre) };
}

/** Ambient air at instant i of a track. */
function airOf(track: Track, i: number, series: HourSeries): Air {
  // What the pressure came from is taken from the last hour at or before the instant.
  const at = track.at[i]!;
  const hour = series.hours.findLast((each) => each.at <= at) ?? series.hours[0]!;
  return airAt({
    temperature: kelvin(track.temperature[i]!),
    pressure: pascal(track.pressure[i]!),
    relativeHumidity: ratio(track.relativeHumidity[i]!),
    pressureFrom: hour.pressureFrom,
  });
}

function breathed(night: Omit<PreparedNight, 'breathe'>, offset: KelvinDifference): Breathed {
  return {
    windows: night.windows.map(({ track }) => needCurve(track, offset)),
    hours: needCurve(night.hours, offset),
    grid: needCurve(night.grid, offset),
    hourAirs: night.hourAirs.map((air) => intakeAir(air, offset)),
    runAirs: night.runAirs.map((air) => intakeAir(air, offset)),
  };
}

/** Needs at least one hour and runs that end after they start; `makePlan` checks both. */
export function prepareNight(request: NightRequest): PreparedNight {
  const { runs, series, options } = request;
  const [first, last] = [series.hours[0]!.at, series.hours.at(-1)!.at];
  const corrected = correctHours(request);
  const normals = keptNormals(options.scenarios, options.seed);
  const order = orderOfRuns(runs);
  const sortedRuns = order.map((i) => runs[i]!);
  const within = (at: number) => instant(Math.min(Math.max(at, first), last));
  const windows = sortedRuns.map((run) =>
    windowOf(corrected.trackAt(steps(within(run.start), within(run.end))), normals),
  );
  const middles = sortedRuns.map((run) => within((run.start + run.end) / 2));
  // Tracks want rising instants; overlapping runs can have their middles in another order.
  const rising = Float64Array.from(middles).sort();
  const middleTrack = corrected.trackAt(rising);
  const runAirs = middles.map((at) => airOf(middleTrack, rising.indexOf(at), series));
  const hours = corrected.trackAt(Float64Array.from(series.hours, (hour) => hour.at));
  const coverage = sortedRuns.map((run) => coverageOf(run, series));
  const { now } = request;
  const night = {
    series,
    order,
    sortedRuns,
    coverage,
    corrected,
    normals,
    windows,
    runAirs,
    runGiven: middles.map(corrected.givenAt),
    hours,
    hourAirs: series.hours.map((_, i) => airOf(hours, i, series)),
    hoursTold: series.hours.map((hour): HourTold => {
      const { temperature, pressure, relativeHumidity } = hour;
      return { from: provenanceOf(hour, series.source), given: { temperature, pressure, relativeHumidity } };
    }),
    grid: corrected.trackAt(evenSteps(first, last)),
    now,
    warnings: nightWarnings({ series, order, sortedRuns, coverage, corrected, now }),
  };
  const kept = new Map<number, Breathed>();
  return {
    ...night,
    breathe(offset) {
      const known = kept.get(offset) ?? breathed(night, kelvinDifference(offset));
      kept.set(offset, known);
      return known;
    },
  };
}
