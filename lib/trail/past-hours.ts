import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, instant } from '@/lib/time/instant';
import type { Kelvin, Metre, Pascal, Ratio } from '@/lib/units/quantity';
import type { Ride } from './ride';

/** Air as it was at a height in past winters. */
export type PastAirOfMonth = {
  readonly temperature: Kelvin;
  readonly pressure: Pascal;
  readonly relativeHumidity: Ratio;
  readonly elevation: Metre;
};

type Credit = { readonly name: string; readonly attribution: string; readonly attributionUrl: string };

/**
 * Hours of a ride that no forecast reaches: the same air of past winters from its first hour to its last. It counts as told
 * at the start, since the choice of cold hours among all hours already holds how far a day may be off.
 */
export function pastHours({ points }: Ride, air: PastAirOfMonth, credit: Credit): HourSeries {
  const [first, last] = [points[0]!.at, points.at(-1)!.at];
  const from = Math.floor(first / HOUR_MS) * HOUR_MS;
  const count = Math.ceil((last - from) / HOUR_MS) + 1;
  const { temperature, pressure, relativeHumidity, elevation } = air;
  return {
    hours: Array.from({ length: count }, (_, i) => ({
      at: instant(from + i * HOUR_MS),
      temperature,
      pressure,
      pressureFrom: 'station',
      relativeHumidity,
      spread: null,
      origin: 'typed',
      rawModel: false,
    })),
    elevation,
    source: { ...credit, issuedAt: first, fetchedAt: null, modelElevation: elevation },
  };
}
