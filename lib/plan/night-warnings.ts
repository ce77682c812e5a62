import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { clearCalm, mayBeRawModel } from './clear-calm';
import { issuedAt } from './forecast-error';
import {
  LONGEST_QUIET_GAP_HOURS,
  RAW_MODEL_BIAS,
  SEASON_LEAD_HOURS,
  TEMPERATURE_MEMORY_HOURS,
} from './judgement';
import type { CorrectedHours } from './readings';
import type { PlanWarning, Run } from './types';

const DAY_HOURS = 24;

/** An hour that is at least half of a clear calm night over snow is named as one. */
const NAMED_FROM = 0.5;

/** Whether the hours say anything about a run. */
export type Coverage = 'covered' | 'before' | 'after';

/** The hours, what readings made of them, and the runs by start: what can be warned about whatever the machine. */
export type WarnedNight = {
  readonly series: HourSeries;
  readonly corrected: CorrectedHours;
  readonly now: Instant;
  /** Runs by start; sortedRuns[i] is request.runs[order[i]]. */
  readonly order: readonly number[];
  readonly sortedRuns: readonly Run[];
  readonly coverage: readonly Coverage[];
};

/** Warnings about the hours and the runs, the same for every machine. */
export function nightWarnings(night: WarnedNight): readonly PlanWarning[] {
  return [
    ...orderWarnings(night),
    ...coverageWarnings(night),
    ...gapWarnings(night),
    ...pressureWarnings(night),
    ...seasonWarnings(night),
    ...clearCalmWarnings(night),
    ...night.corrected.warnings,
  ];
}

function orderWarnings({ order, sortedRuns }: WarnedNight): readonly PlanWarning[] {
  const reordered = order.some((given, i) => given !== i);
  const overlaps = sortedRuns.flatMap((run, i): PlanWarning[] => {
    const other = sortedRuns.findIndex((earlier, j) => j < i && earlier.end > run.start);
    return other === -1 ? [] : [{ code: 'runs-overlap', run: i, other }];
  });
  return reordered ? [{ code: 'runs-reordered' }, ...overlaps] : overlaps;
}

function coverageWarnings({ coverage, series }: WarnedNight): readonly PlanWarning[] {
  const [hoursStart, hoursEnd] = [series.hours[0]!.at, series.hours.at(-1)!.at];
  return coverage.flatMap((covered, run): PlanWarning[] => {
    if (covered === 'covered') return [];
    return covered === 'after'
      ? [{ code: 'run-beyond-hours', run, hoursEnd }]
      : [{ code: 'run-before-hours', run, hoursStart }];
  });
}

/** Long gaps between hours that matter to a run: something had to be guessed in between, here or before it came here. */
function gapWarnings({ series, sortedRuns }: WarnedNight): readonly PlanWarning[] {
  const told = series.hours.filter(({ origin }) => origin !== 'filled');
  return told.slice(1).flatMap((hour, i): PlanWarning[] => {
    const before = told[i]!;
    const long = hour.at - before.at > LONGEST_QUIET_GAP_HOURS * HOUR_MS;
    const matters = sortedRuns.some((run) => run.start < hour.at && run.end > before.at);
    return long && matters ? [{ code: 'gap-in-hours', from: before.at, to: hour.at }] : [];
  });
}

function pressureWarnings({ series, corrected }: WarnedNight): readonly PlanWarning[] {
  const estimated = series.hours.some((hour) => hour.pressureFrom === 'standard');
  return estimated && !corrected.pressureRead ? [{ code: 'pressure-is-estimate' }] : [];
}

/** The first run to come that is so far away that its hours are a season and no forecast. */
function seasonWarnings({ series, sortedRuns, coverage, now }: WarnedNight): readonly PlanWarning[] {
  const issued = issuedAt({ series, now });
  const run = sortedRuns.findIndex(
    ({ start }, i) =>
      coverage[i] === 'covered' && start >= now && start - issued > SEASON_LEAD_HOURS * HOUR_MS,
  );
  if (run === -1) return [];
  const daysAhead = Math.round((sortedRuns[run]!.start - issued) / HOUR_MS / DAY_HOURS);
  return [{ code: 'season-not-forecast', run, daysAhead }];
}

/**
 * The first run to come on a clear calm night over snow that only a raw model has forecast, where no reading of the last
 * hours says how the night really goes.
 */
function clearCalmWarnings({
  series,
  sortedRuns,
  coverage,
  now,
  corrected,
}: WarnedNight): readonly PlanWarning[] {
  const read = corrected.temperatureReadAt ?? Number.NEGATIVE_INFINITY;
  const clear = series.hours.filter((hour) => mayBeRawModel(hour) && clearCalm(hour) >= NAMED_FROM);
  const run = sortedRuns.findIndex(
    ({ start, end }, i) =>
      coverage[i] === 'covered' &&
      start >= now &&
      start - read > TEMPERATURE_MEMORY_HOURS * HOUR_MS &&
      clear.some(({ at }) => at > start - HOUR_MS && at < end + HOUR_MS),
  );
  return run === -1 ? [] : [{ code: 'model-misses-clear-cold', run, colder: RAW_MODEL_BIAS }];
}
