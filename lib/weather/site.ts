import { PRESSURE_EXPONENT, STANDARD } from '@/lib/air/standard-atmosphere';
import { type Kelvin, kelvin, type Metre, type Pascal, pascal } from '@/lib/units/quantity';

/** A way up or down [m]. */
export type Move = { readonly from: Metre; readonly to: Metre };

/**
 * Temperature moved from one height to another with the standard lapse: T' = T - L (to - from).
 * On a night with an inversion the sign is wrong; a reading at the track mends that.
 * Source of the lapse: ISO 2533:1975, 6.5 K/km; services use the same.
 */
export function temperatureMoved(temperature: Kelvin, { from, to }: Move): Kelvin {
  return kelvin(temperature - STANDARD.lapse * (to - from));
}

/**
 * Station pressure [Pa] moved through air with the standard lapse in hydrostatic balance: p' = p (T'/T)^(g/(R L)).
 * Source: ISO 2533:1975, eq. 12, with the hour's own temperature at the start of the way in place of the standard's.
 */
export function pressureMoved(pressure: Pascal, temperature: Kelvin, move: Move): Pascal {
  return pascal(pressure * (temperatureMoved(temperature, move) / temperature) ** PRESSURE_EXPONENT);
}
