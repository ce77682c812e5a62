import { STANDARD } from '@/lib/air/standard-atmosphere';
import type { Hour } from '@/lib/hours/series';
import { type Kelvin, kelvin, type Metre, type Pascal, pascal, type Quantity } from '@/lib/units/quantity';

/** Fall of temperature with height [K/m]; negative where the valley is the colder place. */
export type Lapse = Quantity<'K/m'>;

/** Mean fall of the troposphere [K/m]. Source: ISO 2533:1975, section 2. */
export const USUAL_LAPSE = STANDARD.lapse as Lapse;

/** Steeper than 15 K/km air turns over; stronger inversions than 30 K/km are not met over a ride. Judgement. */
export const LAPSE_RANGE = { least: -0.03, most: 0.015 } as const;

/** A lapse from kelvin per metre. */
export function lapse(value: number): Lapse {
  if (!(value >= LAPSE_RANGE.least && value <= LAPSE_RANGE.most))
    throw new RangeError(`a fall of ${value} K/m is not met in air`);
  return value as Lapse;
}

/** Temperature at another height [K]: T2 = T1 − L Δh. */
export function temperatureAt(temperature: Kelvin, rise: number, fall: Lapse): Kelvin {
  return kelvin(temperature - fall * rise);
}

/**
 * Station pressure at another height [Pa].
 *
 *     p2 = p1 (T2/T1)^(g/(R L)),  and with L = 0   p2 = p1 exp(−g Δh/(R T1))
 *
 * Hydrostatic column of dry air with a straight fall of temperature. Source: ISO 2533:1975, eqs 12 and 13 with a free
 * start.
 *
 * @param rise height gained [m]
 */
export function pressureAt(pressure: Pascal, temperature: Kelvin, at: { rise: number; fall: Lapse }): Pascal {
  const { rise, fall } = at;
  const perMetre = STANDARD.gravity / STANDARD.gasConstant;
  // p2/p1 as an exponential: log1p keeps its digits where the fall is next to nothing.
  const warmth = fall === 0 ? -rise / temperature : Math.log1p((-fall * rise) / temperature) / fall;
  return pascal(pressure * Math.exp(perMetre * warmth));
}

/** An hour moved from one height to another. Relative humidity is kept: it hardly counts for density. */
export function moveHour(hour: Hour, climb: { readonly from: Metre; readonly to: Metre }, fall: Lapse): Hour {
  const rise = climb.to - climb.from;
  return {
    ...hour,
    temperature: temperatureAt(hour.temperature, rise, fall),
    pressure: pressureAt(hour.pressure, hour.temperature, { rise, fall }),
  };
}
