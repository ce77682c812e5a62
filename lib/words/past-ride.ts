import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import type { HistoryJson } from '@/lib/weather/history-json';
import { MONTHS, type Percentile } from './months';

/** What to do for a ride that no forecast reaches. */
export const BEYOND_FORECAST =
  'A forecast reaches from yesterday to ten days ahead, and this ride is outside of it. Choose past winters, or type the temperatures.';

/** Said beside past winters where a forecast would be closer to the day. */
export const FORECAST_IS_CLOSER = 'A forecast reaches this ride and is closer to its day: choose it above.';

export const NO_PAST_HOURS =
  'No past hours were found for this place and month. Type the temperatures of the ride yourself.';

/** "July at 320 m in past winters, from 9 to 14 h: 8 hours in 10 lay between −9 °C and 2 °C. Set up for −9 °C all day." */
export function pastRideSentence(
  { months, elevationM }: HistoryJson,
  hours: string,
  { percentile, units }: { readonly percentile: Percentile; readonly units: UnitChoice },
): string {
  const [month] = months;
  if (month === undefined) return NO_PAST_HOURS;
  const said = (celsius: number) => formatTemperature(celsiusToKelvin(celsius), units);
  const { p10, p90 } = month.temperatureC;
  const where = `${MONTHS[month.month - 1]} at ${formatElevation(metre(elevationM), units)} in past years, ${hours.replace('-', ' to ')} h`;
  return `${where}: 8 hours in 10 lay between ${said(p10)} and ${said(p90)}. Planned for ${said(month.temperatureC[percentile])} all day.`;
}
