import {
  type Density,
  type Kelvin,
  kelvin,
  type Metre,
  metre,
  type Pascal,
  pascal,
} from '@/lib/units/quantity';

/** ISO 2533:1975, table 1 and section 2: the troposphere. Heights are geopotential metres. */
export const STANDARD = {
  /** Sea-level temperature [K]. */
  temperature: 288.15,
  /** Sea-level pressure [Pa]. */
  pressure: 101_325,
  /** Sea-level density [kg/m³]. */
  density: 1.225,
  /** Temperature fall with height [K/m]. */
  lapse: 0.0065,
  /** Specific gas constant of the standard's air [J/(kg K)]. */
  gasConstant: 287.05287,
  /** Standard gravity [m/s²]. */
  gravity: 9.80665,
} as const;

/** g / (R L) = 5.25588: pressure goes with this power of temperature. */
const PRESSURE_EXPONENT = STANDARD.gravity / (STANDARD.gasConstant * STANDARD.lapse);

/** Standard temperature [K]: T = T0 - L H. Source: ISO 2533:1975, eq. 7. */
export function standardTemperature(elevation: Metre): Kelvin {
  return kelvin(STANDARD.temperature - STANDARD.lapse * elevation);
}

/** Standard pressure [Pa]: p = p0 (T/T0)^(g/(R L)). Source: ISO 2533:1975, eq. 12. */
export function standardPressure(elevation: Metre): Pascal {
  return pascal(
    STANDARD.pressure * (standardTemperature(elevation) / STANDARD.temperature) ** PRESSURE_EXPONENT,
  );
}

/** Height at which the standard atmosphere has this pressure [m]: standardPressure turned round. */
export function pressureAltitude(pressure: Pascal): Metre {
  const warmth = (pressure / STANDARD.pressure) ** (1 / PRESSURE_EXPONENT);
  return metre((STANDARD.temperature / STANDARD.lapse) * (1 - warmth));
}

/**
 * Height at which the standard atmosphere has this density [m].
 *
 *     H = (T0/L) [1 - (ρ/ρ0)^(1/(g/(R L) - 1))] = 44330.77 [1 - (ρ/1.225)^0.234969]
 *
 * Source: ISO 2533:1975, eqs 7, 12 and 14 turned round. The standard's air is an ideal gas; real air at 15 °C is
 * 0.04 % denser, so standard air given by temperature and pressure comes out 4 m low.
 */
export function densityAltitude(airDensity: Density): Metre {
  const warmth = (airDensity / STANDARD.density) ** (1 / (PRESSURE_EXPONENT - 1));
  return metre((STANDARD.temperature / STANDARD.lapse) * (1 - warmth));
}
