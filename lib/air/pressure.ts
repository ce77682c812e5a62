import { type Kelvin, type Metre, metre, type Pascal, pascal, type Ratio } from '@/lib/units/quantity';
import type { PressureGiven } from './air';
import { saturationOverWater } from './saturation';
import { pressureAltitude, STANDARD, standardPressure } from './standard-atmosphere';

/** What a reduction to sea level rests on, beside the pressure. */
export type AirColumn = {
  readonly elevation: Metre;
  readonly temperature: Kelvin;
  readonly relativeHumidity: Ratio;
};

/**
 * Station pressure from an altimeter setting [Pa]: the standard atmosphere, shifted in height until it has the
 * setting at sea level, read at the elevation.
 *
 *     p = p_std(H_std(setting) + elevation)
 *
 * Source: the definition of QNH, ICAO Annex 3 and Doc 8896; heights geopotential. Scaling the whole standard
 * profile by setting/p0 instead is 0.3 % off at 3000 m; adding the 0.3 hPa of older tables is 0.03 % off everywhere.
 */
export function stationFromAltimeter(setting: Pascal, elevation: Metre): Pascal {
  return standardPressure(metre(pressureAltitude(setting) + elevation));
}

/** Altimeter setting from station pressure [Pa]: `stationFromAltimeter` turned round. */
export function altimeterFromStation(station: Pascal, elevation: Metre): Pascal {
  return standardPressure(metre(pressureAltitude(station) - elevation));
}

/** WMO-No. 8, vol. I, ch. 3, eq. 3.2: K_p [K/m] and C_h [K/Pa]. */
const WMO_GRAVITY_OVER_GAS_CONSTANT = 0.0148275;
const WMO_HUMIDITY_COEFFICIENT = 0.12 / 100;

/**
 * Sea-level pressure over station pressure, as weather services reduce it with the temperature of the hour.
 *
 *     log10(p_sea/p) = K_p H / (T + L H/2 + C_h e)
 *
 * H [gpm], T [K], L = 0.0065 K/m, e vapour pressure. Source: WMO-No. 8 (2018), vol. I, ch. 3, eq. 3.2. Meant for
 * stations below 750 m; higher up services differ among themselves by 1 to 3 hPa, so a station pressure or an
 * altimeter setting is the better number there.
 */
function seaLevelFactor({ elevation, temperature, relativeHumidity }: AirColumn): number {
  const vapourPressure = relativeHumidity * saturationOverWater(temperature);
  const meanTemperature =
    temperature + (STANDARD.lapse * elevation) / 2 + WMO_HUMIDITY_COEFFICIENT * vapourPressure;
  return 10 ** ((WMO_GRAVITY_OVER_GAS_CONSTANT * elevation) / meanTemperature);
}

/** Station pressure from a pressure reduced to mean sea level [Pa]. */
export function stationFromSeaLevel(seaLevel: Pascal, column: AirColumn): Pascal {
  return pascal(seaLevel / seaLevelFactor(column));
}

/** Pressure reduced to mean sea level from station pressure [Pa]. */
export function seaLevelFromStation(station: Pascal, column: AirColumn): Pascal {
  return pascal(station * seaLevelFactor(column));
}

/** The pressure the engine breathes [Pa], whichever kind was given. */
export function stationPressure(given: PressureGiven, temperature: Kelvin, relativeHumidity: Ratio): Pascal {
  switch (given.kind) {
    case 'station':
      return given.value;
    case 'altimeter':
      return stationFromAltimeter(given.value, given.elevation);
    case 'sea-level':
      return stationFromSeaLevel(given.value, {
        elevation: given.elevation,
        temperature,
        relativeHumidity,
      });
    case 'standard':
      return standardPressure(given.elevation);
  }
}
