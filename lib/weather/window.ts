import { HOUR_MS, type Instant } from '@/lib/time/instant';
import type { Forecast } from './forecast';

export type ForecastWindow = { readonly from: Instant; readonly hours: number };

/** Beyond two or three days a service may step by six hours: the row on either side of the window is still its hour. */
const LONGEST_STEP_MS = 6 * HOUR_MS;

/**
 * The hours of a forecast that cover a window. Where none falls on an edge, the one just beyond it is taken too, so that
 * every instant of the window lies between two hours.
 */
export function cutWindow(forecast: Forecast, { from, hours }: ForecastWindow): Forecast {
  const to = from + hours * HOUR_MS;
  const all = forecast.hours;
  let first = all.findIndex((hour) => hour.at >= from);
  if (first < 0) first = all.length;
  const before = all[first - 1];
  if (all[first]?.at !== from && before !== undefined && from - before.at < LONGEST_STEP_MS) first -= 1;
  let end = all.findIndex((hour) => hour.at >= to);
  const after = all[end];
  if (after === undefined) end = all.length;
  else if (after.at === to || after.at - to < LONGEST_STEP_MS) end += 1;
  return {
    ...forecast,
    hours: all.slice(first, end),
    missing: forecast.missing.filter((at) => at >= from && at <= to),
    leftOut: forecast.leftOut.filter(({ at }) => at >= from && at <= to),
  };
}
