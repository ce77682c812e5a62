import { type Density, density, type Kelvin, kelvin, type Ratio, ratio } from '@/lib/units/quantity';
import type { FuelDensityOption } from './machine';

/** Reference temperature of ASTM D1250 [K]: 15 °C. */
const FUEL_REFERENCE_TEMPERATURE = kelvin(288.15);
/** Pump petrol at 15 °C [kg/m³]; EN 228 allows 720 to 775. */
export const PUMP_FUEL_DENSITY = density(740);

/** Gasoline coefficients of ASTM D1250-80, Table 54B (density at 15 °C below 770 kg/m³). */
const K0 = 346.4228; // kg²/(m⁶·K)
const K1 = 0.4388; // kg/(m³·K)

/**
 * Volume correction factor of petrol: density over its density at 15 °C.
 *
 *     α = K0/ρ15² + K1/ρ15      VCF = exp(−α Δt (1 + 0.8 α Δt)),  Δt = t − 15 °C
 *
 * Source: ASTM D1250-80 / API MPMS 11.1, Table 54B.
 *
 * @param temperature of the fuel [K]
 * @param referenceDensity at 15 °C [kg/m³]
 */
export function volumeCorrectionFactor(
  temperature: Kelvin,
  referenceDensity: Density = PUMP_FUEL_DENSITY,
): Ratio {
  const expansion = K0 / referenceDensity ** 2 + K1 / referenceDensity;
  const step = temperature - FUEL_REFERENCE_TEMPERATURE;
  return ratio(Math.exp(-expansion * step * (1 + 0.8 * expansion * step)));
}

/**
 * Fuel density now over fuel density at the baseline.
 *
 * @param option how the fuel's temperature follows the ambient air; null holds the density, since the viscosity of
 *   cold fuel takes about as much flow as its density gives
 * @param ambient ambient temperature now [K]
 */
export function fuelDensityRatio(option: FuelDensityOption | null, ambient: Kelvin): Ratio {
  if (option === null) return ratio(1);
  const now = volumeCorrectionFactor(kelvin(ambient + option.offset));
  return ratio(now / volumeCorrectionFactor(kelvin(option.baselineTemperature)));
}
