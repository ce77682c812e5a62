import * as z from 'zod/mini';
import { latitudeText, longitudeText, numberText } from '@/app/api/_http/query';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { elevationM, time } from '@/lib/contract/numbers';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import type { ForecastQuestion } from '@/lib/weather/get-forecast';

const MOST_HOURS = 264;

export const forecastQuerySchema = z.strictObject({
  lat: latitudeText,
  lon: longitudeText,
  elevation: z.optional(z.pipe(numberText('metres'), elevationM)),
  from: z.optional(time),
  hours: z._default(
    z.pipe(
      numberText(`hours from 1 to ${MOST_HOURS}`),
      z
        .int('expected whole hours')
        .check(z.minimum(1, 'expected 1 or more'), z.maximum(MOST_HOURS, `expected at most ${MOST_HOURS}`)),
    ),
    48,
  ),
});

export type ForecastQuery = z.output<typeof forecastQuerySchema>;

/** Without a start the hours begin with the one that is under way. */
export function forecastQuestion(query: ForecastQuery, now: Instant): ForecastQuestion {
  const thisHour = instant(Math.floor(now / HOUR_MS) * HOUR_MS);
  return {
    latitude: query.lat,
    longitude: query.lon,
    elevation: query.elevation === undefined ? null : metre(query.elevation),
    from: query.from === undefined ? thisHour : instantFromJson(query.from),
    hours: query.hours,
  };
}
