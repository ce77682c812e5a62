import { type Kelvin, type Pascal, pascal, type Ratio, ratio } from '@/lib/units/quantity';
import type { Humidity } from './air';
import { saturationOverIce, saturationOverWater } from './saturation';

/**
 * Vapour pressure of the air [Pa], as weather services and engine test codes reckon it.
 *
 *     e = RH e_w(T) = e_w(dew point) = e_i(frost point)
 *
 * e_w over liquid water at every temperature (WMO-No. 8, vol. I, ch. 4), e_i over ice.
 */
function vapourPressureOf(humidity: Humidity, temperature: Kelvin): Pascal {
  switch (humidity.kind) {
    case 'relative':
      return pascal(humidity.value * saturationOverWater(temperature));
    case 'dew-point':
      return saturationOverWater(humidity.value);
    case 'frost-point':
      return saturationOverIce(humidity.value);
  }
}

/** Relative humidity over liquid water, 1 = saturated; above 1 where the humidity is more than the air can hold. */
export function relativeHumidityOf(humidity: Humidity, temperature: Kelvin): Ratio {
  if (humidity.kind === 'relative') return humidity.value;
  return ratio(vapourPressureOf(humidity, temperature) / saturationOverWater(temperature));
}
