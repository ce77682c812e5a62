import { HOUR_MS } from '@/lib/time/instant';
import { clearCalm, mayBeRawModel } from './clear-calm';
import { issuedAt } from './forecast-error';
import { RAW_MODEL_BIAS, SEASON_LEAD_HOURS, TEMPERATURE_MEMORY_HOURS } from './judgement';
import type { PreparedNight } from './night';
import type { PlanWarning } from './types';

const DAY_HOURS = 24;

/** An hour that is at least half of a clear calm night over snow is named as one. */
const NAMED_FROM = 0.5;

/** The first run to come that is so far away that its hours are a season and no forecast. */
export function seasonWarnings({ series, sortedRuns, coverage, now }: PreparedNight): readonly PlanWarning[] {
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
export function clearCalmWarnings({
  series,
  sortedRuns,
  coverage,
  now,
  corrected,
}: PreparedNight): readonly PlanWarning[] {
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
