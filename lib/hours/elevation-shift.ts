import { PRESSURE_EXPONENT, STANDARD } from '@/lib/air/standard-atmosphere';
import { type Kelvin, kelvin, type Metre, type Pascal, pascal } from '@/lib/units/quantity';
import type { HourSeries } from './series';

export type Climb = { readonly from: Metre; readonly to: Metre };

/**
 * Temperature moved from one height to another [K].
 *
 *     T2 = T1 - L (h2 - h1)
 *
 * L = 6.5 K/km, the mean fall of the troposphere. Source: ISO 2533:1975, section 2. On a clear calm night the valley
 * may be the colder place; a reading at the track beats this.
 */
export function moveTemperature(temperature: Kelvin, { from, to }: Climb): Kelvin {
  return kelvin(temperature - STANDARD.lapse * (to - from));
}

/**
 * Station pressure moved from one height to another [Pa], through the air that is there.
 *
 *     p2 = p1 (T2/T1)^(g/(R L))
 *
 * Hydrostatic column with lapse L, T1 the actual temperature at the first height. Source: ISO 2533:1975, eq. 12 with
 * a free start. Dry air: moisture at 30 °C would change a step of 300 m by 0.5 hPa, at 0 °C by less than 0.1 hPa.
 */
export function movePressure(pressure: Pascal, temperature: Kelvin, climb: Climb): Pascal {
  return pascal(pressure * (moveTemperature(temperature, climb) / temperature) ** PRESSURE_EXPONENT);
}

/** A series moved to another height, hour by hour. Relative humidity is kept: it hardly counts for density. */
export function moveSeries(series: HourSeries, to: Metre): HourSeries {
  const climb = { from: series.elevation, to };
  if (climb.from === climb.to) return series;
  return {
    ...series,
    elevation: to,
    hours: series.hours.map((hour) => ({
      ...hour,
      temperature: moveTemperature(hour.temperature, climb),
      pressure: movePressure(hour.pressure, hour.temperature, climb),
    })),
  };
}
