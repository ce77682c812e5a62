import { relativeHumidityOf } from '@/lib/air/humidity';
import { numberText } from '@/lib/units/entry-text';
import type { Kelvin } from '@/lib/units/quantity';

/** A dew point as it is typed in a row of hours: the relative humidity [%] it is at the hour's temperature. */
export function humidityAtDewPoint(dewPoint: Kelvin, temperature: Kelvin): string {
  const value = relativeHumidityOf({ kind: 'dew-point', value: dewPoint }, temperature);
  return numberText(Math.min(1, value) * 100, 1);
}
