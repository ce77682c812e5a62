import type { ContractProblem } from '@/lib/contract/problem';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import type { HourSeries } from '@/lib/hours/series';
import type { Result } from '@/lib/result/result';
import type { EventRecord } from '@/lib/store/records';

/** The hours of an event; null where none have been given yet. */
export function hoursOfNight(record: EventRecord): Result<HourSeries, readonly ContractProblem[]> | null {
  const { typed, event } = record;
  if (typed === null || typed.hours.length === 0) return null;
  const { hours, pressure, relativeHumidity } = typed;
  return seriesFromJson(hours, event.elevationM, { pressure, relativeHumidity, path: ['typed', 'hours'] });
}
