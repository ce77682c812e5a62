import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { time } from '@/lib/contract/numbers';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { withoutDust } from '@/lib/units/entry-text';
import type { PastAir, PastSeason, Percentiles } from './past';

const percentilesSchema = z.strictObject({ p10: z.number(), p50: z.number(), p90: z.number() });

const CREDIT = {
  attribution: 'Past weather by Open-Meteo.com (Copernicus ERA5, ECMWF IFS)',
  attributionUrl: 'https://open-meteo.com/',
};

export const historyJsonSchema = z
  .strictObject({
    elevationM: z.number(),
    timezone: z.string(),
    months: z.array(
      z.strictObject({
        month: z.int().check(z.minimum(1), z.maximum(12)),
        hours: z.int().check(about('Riding hours behind the numbers.')),
        temperatureC: percentilesSchema,
        pressureHpa: percentilesSchema.check(about('Station pressure [hPa].')),
        relativeHumidity: percentilesSchema,
      }),
    ),
    stretches: z.array(z.strictObject({ from: z.string(), to: z.string() })).check(about('Days covered.')),
    attribution: z.string(),
    attributionUrl: z.string(),
  })
  .register(z.globalRegistry, { id: 'History' });

export const pastAirJsonSchema = z
  .strictObject({
    time,
    elevationM: z.number(),
    temperatureC: z.number(),
    pressureHpa: z.number().check(about('Station pressure [hPa].')),
    relativeHumidity: z.number(),
    attribution: z.string(),
    attributionUrl: z.string(),
  })
  .register(z.globalRegistry, { id: 'PastAir' });

export type HistoryJson = z.output<typeof historyJsonSchema>;
export type PastAirJson = z.output<typeof pastAirJsonSchema>;

function percentilesTo<Q>(
  { p10, p50, p90 }: Percentiles<Q>,
  to: (value: Q) => number,
): HistoryJson['months'][number]['temperatureC'] {
  return { p10: withoutDust(to(p10)), p50: withoutDust(to(p50)), p90: withoutDust(to(p90)) };
}

export function historyToJson(season: PastSeason): HistoryJson {
  return {
    elevationM: season.elevation,
    timezone: season.zone,
    months: season.months.map((month) => ({
      month: month.month,
      hours: month.hours,
      temperatureC: percentilesTo(month.temperature, kelvinToCelsius),
      pressureHpa: percentilesTo(month.pressure, pascalToHectopascal),
      relativeHumidity: percentilesTo(month.relativeHumidity, Number),
    })),
    stretches: season.stretches.map(({ from, to }) => ({ from, to })),
    ...CREDIT,
  };
}

export function pastAirToJson(air: PastAir): PastAirJson {
  return {
    time: isoUtc(air.at),
    elevationM: air.elevation,
    temperatureC: withoutDust(kelvinToCelsius(air.temperature)),
    pressureHpa: withoutDust(pascalToHectopascal(air.pressure)),
    relativeHumidity: withoutDust(air.relativeHumidity),
    ...CREDIT,
  };
}
