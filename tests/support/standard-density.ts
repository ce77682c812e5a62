import { STANDARD, standardPressure, standardTemperature } from '@/lib/air/standard-atmosphere';
import { type Density, density, type Metre } from '@/lib/units/quantity';

/** Standard density [kg/m³]: ρ = p / (R T). Source: ISO 2533:1975, eq. 14. */
export function standardDensity(elevation: Metre): Density {
  return density(standardPressure(elevation) / (STANDARD.gasConstant * standardTemperature(elevation)));
}
