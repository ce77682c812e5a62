import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { type metre, ratio } from '@/lib/units/quantity';
import type { Forecast } from '@/lib/weather/forecast';

/** When the night of tests/api/night.ts is posted: an hour before its first round. */
export const POSTED_AT = instant(Date.parse('2027-01-16T18:00:00-06:00'));

type Air = {
  readonly degreesAt: (hour: number) => number;
  readonly colder: number;
  readonly madeAt: Instant;
};

/** Hours as a board is given them, from a function of the hours since it was posted. */
export function boardForecast(
  from: Instant,
  hours: number,
  air: Air & { readonly elevation: ReturnType<typeof metre> },
): Forecast {
  const first = Math.ceil(from / HOUR_MS) * HOUR_MS;
  return {
    hours: Array.from({ length: hours }, (_, i) => {
      const at = instant(first + i * HOUR_MS);
      const hour = (at - POSTED_AT) / HOUR_MS;
      return {
        at,
        temperature: celsiusToKelvin(air.degreesAt(hour) - air.colder),
        pressure: hectopascalToPascal(986),
        pressureFrom: 'station' as const,
        relativeHumidity: ratio(0.8),
        spread: null,
        origin: 'forecast' as const,
        rawModel: false,
        temperatureBy: 'open-meteo' as const,
        pressureBy: 'open-meteo' as const,
      };
    }),
    elevation: air.elevation,
    source: {
      name: 'open-meteo',
      attribution: 'Weather data by Open-Meteo.com',
      attributionUrl: null,
      issuedAt: air.madeAt,
      fetchedAt: air.madeAt,
      modelElevation: null,
    },
    missing: [],
    leftOut: [],
    place: { latitude: 46.8, longitude: -92.1 },
    elevationFrom: 'given',
    by: 'open-meteo',
    freshness: 'fresh',
    freshUntil: air.madeAt,
    tries: [],
  };
}
