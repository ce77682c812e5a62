import { STANDARD } from '@/lib/air/standard-atmosphere';
import { type Kelvin, kelvin, type Metre, type Pascal, pascal, type Quantity } from '@/lib/units/quantity';
import type { Hour, HourSeries } from './series';

/** A way up or down. */
export type Climb = { readonly from: Metre; readonly to: Metre };

/** Fall of temperature with height [K/m]; negative where the valley is the colder place. */
export type Lapse = Quantity<'K/m'>;

/**
 * Mean fall of the troposphere [K/m]. Source: ISO 2533:1975, section 2. On a clear calm night the valley may be the
 * colder place; a reading at the track beats this.
 */
export const USUAL_LAPSE = STANDARD.lapse as Lapse; // the standard's own table is plain numbers

/** Steeper than 15 K/km air turns over; stronger inversions than 30 K/km are not met over a ride. Judgement. */
export const LAPSE_RANGE = { least: -0.03, most: 0.015 } as const;

/** A lapse from kelvin per metre. */
export function lapse(value: number): Lapse {
  if (!(value >= LAPSE_RANGE.least && value <= LAPSE_RANGE.most))
    throw new RangeError(`a fall of ${value} K/m is not met in air`);
  return value as Lapse; // checked the line above
}

/** Temperature moved from one height to another [K]: T2 = T1 - L (h2 - h1). */
export function moveTemperature(temperature: Kelvin, { from, to }: Climb, fall: Lapse = USUAL_LAPSE): Kelvin {
  return kelvin(temperature - fall * (to - from));
}

/**
 * Station pressure moved from one height to another [Pa], through the air that is there.
 *
 *     p2 = p1 (T2/T1)^(g/(R L)),  and with L = 0   p2 = p1 exp(-g (h2 - h1)/(R T1))
 *
 * Hydrostatic column with lapse L, T1 the actual temperature at the first height. Source: ISO 2533:1975, eqs 12 and 13
 * with a free start. Dry air: moisture at 30 °C would change a step of 300 m by 0.5 hPa, at 0 °C by less than 0.1 hPa.
 *
 * @param air pressure [Pa] and temperature [K] at the first height
 */
export function movePressure(
  { pressure, temperature }: Pick<Hour, 'pressure' | 'temperature'>,
  { from, to }: Climb,
  fall: Lapse = USUAL_LAPSE,
): Pascal {
  const rise = to - from;
  const perMetre = STANDARD.gravity / STANDARD.gasConstant;
  // ln(T2/T1)/L with log1p, which keeps its digits where the fall is next to nothing.
  const warmth = fall === 0 ? -rise / temperature : Math.log1p((-fall * rise) / temperature) / fall;
  return pascal(pressure * Math.exp(perMetre * warmth));
}

/** An hour moved to another height. Relative humidity is kept: it hardly counts for density. */
export function moveHour(hour: Hour, climb: Climb, fall: Lapse = USUAL_LAPSE): Hour {
  return {
    ...hour,
    temperature: moveTemperature(hour.temperature, climb, fall),
    pressure: movePressure(hour, climb, fall),
  };
}

/** A series moved to another height, hour by hour. */
export function moveSeries(series: HourSeries, to: Metre): HourSeries {
  const climb = { from: series.elevation, to };
  if (climb.from === climb.to) return series;
  return { ...series, elevation: to, hours: series.hours.map((hour) => moveHour(hour, climb)) };
}
