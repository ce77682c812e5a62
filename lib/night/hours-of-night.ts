import { forecastSeries } from '@/lib/contract/forecast-series';
import type { ContractProblem } from '@/lib/contract/problem';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { moveSeries } from '@/lib/hours/elevation-shift';
import { mixHours } from '@/lib/hours/mix';
import type { HourSeries } from '@/lib/hours/series';
import { ok, type Result } from '@/lib/result/result';
import type { EventRecord, ForecastRecord } from '@/lib/store/records';
import { metre } from '@/lib/units/quantity';

type Hours = Result<HourSeries, readonly ContractProblem[]> | null;
type Known = { readonly forecast: ForecastRecord | null; readonly text: string; readonly hours: Hours };

/** So many nights' hours are kept: the one on screen, and those of past nights that teach about its place. */
const MOST_KEPT = 6;
let kept: readonly Known[] = [];

/**
 * The hours of an event, typed ones before those of a forecast; null where there are none of either. A record is read anew
 * with everything that is told (jets, runs made, readings), and its hours are in none of that: as long as they stay as they
 * were, the same series is handed out.
 */
export function hoursOfNight({ typed, event }: EventRecord, forecast: ForecastRecord | null): Hours {
  const text = JSON.stringify([typed, event.elevationM]);
  const known = kept.find((each) => each.forecast === forecast && each.text === text);
  if (known !== undefined) return known.hours;
  const hours = readHours({ typed, event }, forecast);
  kept = [{ forecast, text, hours }, ...kept].slice(0, MOST_KEPT);
  return hours;
}

function readHours(
  { typed, event }: Pick<EventRecord, 'typed' | 'event'>,
  forecast: ForecastRecord | null,
): Hours {
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
