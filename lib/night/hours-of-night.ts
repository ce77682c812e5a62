import { forecastSeries } from '@/lib/contract/forecast-series';
import type { ContractProblem } from '@/lib/contract/problem';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { moveSeries } from '@/lib/hours/elevation-shift';
import { mixHours } from '@/lib/hours/mix';
import type { HourSeries } from '@/lib/hours/series';
import { ok, type Result } from '@/lib/result/result';
import type { EventRecord, ForecastRecord } from '@/lib/store/records';
import { metre } from '@/lib/units/quantity';

/** The hours of an event, typed ones before those of a forecast; null where there are none of either. */
export function hoursOfNight(
  { typed, event }: EventRecord,
  forecast: ForecastRecord | null,
): Result<HourSeries, readonly ContractProblem[]> | null {
  // The track's height may have been put right since the forecast came.
  const told =
    forecast === null ? null : moveSeries(forecastSeries(forecast.forecast), metre(event.elevationM));
  if (typed === null || typed.hours.length === 0) {
    const mixed = mixHours(told, null);
    return mixed === null ? null : ok(mixed.series);
  }
  const read = typedSeriesFromJson(typed, event.elevationM, ['typed', 'hours']);
  if (!read.ok) return read;
  return ok(mixHours(told, read.value.series)?.series ?? read.value.series);
}
