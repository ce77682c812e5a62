import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import { enhancementFactor } from '@/lib/air/density';
import { saturationOverWater } from '@/lib/air/saturation';
import { type KelvinDifference, kelvin, ratio } from '@/lib/units/quantity';

/**
 * Air at the carburettor: ambient air warmed by the intake at the same pressure and the same vapour mole fraction.
 * Where cooling would pass the dew point the air is taken as just saturated.
 *
 * @param ambientAir the weather
 * @param offset carburettor air minus ambient air [K]; under a hood it may pass any weather's temperature
 */
export function intakeAir(ambientAir: Air, offset: KelvinDifference): Air {
  if (offset === 0) return ambientAir;
  const { pressure, pressureFrom, vapourMoleFraction } = ambientAir;
  const temperature = kelvin(ambientAir.temperature + offset);
  const vapourPressure = (vapourMoleFraction * pressure) / enhancementFactor(temperature, pressure);
  const relativeHumidity = ratio(Math.min(1, vapourPressure / saturationOverWater(temperature)));
  return airAt({ temperature, pressure, relativeHumidity, pressureFrom });
}
