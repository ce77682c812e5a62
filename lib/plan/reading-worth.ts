import { addMinutes, HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { conditionOn, type MeasuredError } from './conditioning';
import { temperatureError } from './forecast-error';
import {
  READING_CHANCE,
  READING_MINUTES,
  READING_TELLS,
  READING_TEMPERATURE_SD,
  TEMPERATURE_MEMORY_HOURS,
} from './judgement';
import { temperaturesRead } from './readings';
import type { Plan, PlanRequest } from './types';

/** What a thermometer at the track would tell about the next run that it can still change. */
export type ReadingWorth = {
  /** Sorted run it is about. */
  readonly run: number;
  /** As late as leaves time to act on it: the later, the more it tells. */
  readonly at: Instant;
  /** How well the run's temperature is known without it and with it [K], one standard deviation. */
  readonly sdBefore: number;
  readonly sdAfter: number;
  /** True where it tells enough and something hangs on it: a swap, a risk of lean, or a model that misses the cold. */
  readonly pays: boolean;
};

type Asked = Pick<PlanRequest, 'series' | 'readings' | 'now' | 'options' | 'placeOffset'>;

/** The next planned run that leaves time for a swap after a reading, by sorted run; null where none is to come. */
export function runToReadFor({ runs, sortedRuns }: Plan, { now, options }: Asked): number | null {
  const next = runs.find(
    ({ state, run }) =>
      state === 'planned' && addMinutes(sortedRuns[run]!.start, -options.swapMinutes) >= now,
  );
  return next?.run ?? null;
}

/** A run, and those planned after it that an error of its hour still reaches. */
function runsAtStake({ runs, sortedRuns }: Plan, first: number) {
  const end = sortedRuns[first]!.start + TEMPERATURE_MEMORY_HOURS * HOUR_MS;
  return runs.filter(
    ({ state, run }) => state === 'planned' && run >= first && sortedRuns[run]!.start <= end,
  );
}

function hangsOnIt(plan: Plan, runs: Plan['runs']): boolean {
  return (
    runs.some(({ chanceOfLean }) => chanceOfLean >= READING_CHANCE) ||
    plan.swaps.some(({ beforeRun }) => runs.some(({ run }) => run === beforeRun)) ||
    plan.warnings.some(({ code }) => code === 'model-misses-clear-cold')
  );
}

/**
 * What a reading would tell, and whether to ask for one; null where no run is to come that it could still change. How
 * much an error narrows hangs on when is read and not on what is read, so it is known beforehand, exactly.
 */
export function readingWorth(request: Asked, plan: Plan): ReadingWorth | null {
  const { series, now, options } = request;
  const run = runToReadFor(plan, request);
  if (run === null) return null;
  const { start } = plan.sortedRuns[run]!;
  const first = series.hours[0]!.at;
  const at = instant(
    Math.max(now, first, Math.min(start, addMinutes(start, -options.swapMinutes - READING_MINUTES))),
  );
  const error = temperatureError(request);
  const heard = temperaturesRead(request);
  const sdAtStart = (known: readonly MeasuredError[]): number =>
    conditionOn(error, known)(Float64Array.of(start)).sd[0]!;
  const sdBefore = sdAtStart(heard);
  // Its value is nobody's to know yet, and moves no sd.
  const sdAfter = sdAtStart([...heard, { at, value: 0, sd: READING_TEMPERATURE_SD }]);
  const pays = sdBefore - sdAfter >= READING_TELLS && hangsOnIt(plan, runsAtStake(plan, run));
  return { run, at, sdBefore, sdAfter, pays };
}
