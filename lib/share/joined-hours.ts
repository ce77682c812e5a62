import type { HourSeries } from '@/lib/hours/series';

/** A forecast with the hours that were shared before its first and after its last; what is newer wins. */
export function joinedHours(shared: HourSeries, forecast: HourSeries): HourSeries {
  const [first, last] = [forecast.hours[0], forecast.hours.at(-1)];
  if (first === undefined || last === undefined) return shared;
  return {
    ...forecast,
    hours: [
      ...shared.hours.filter(({ at }) => at < first.at),
      ...forecast.hours,
      ...shared.hours.filter(({ at }) => at > last.at),
    ],
  };
}
