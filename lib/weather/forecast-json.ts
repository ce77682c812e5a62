import * as z from 'zod';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { elevationM, pressureHpa, relativeHumidity, temperatureC, time } from '@/lib/contract/numbers';
import { skyFields, skyFromJson, skyToJson } from '@/lib/contract/sky';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import {
  celsiusToKelvin,
  hectopascalToPascal,
  kelvinToCelsius,
  pascalToHectopascal,
} from '@/lib/units/convert';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';
import { CONTRADICTIONS } from './checks/contradiction';
import type { Forecast, ForecastHour } from './forecast';
import { PRESSURE_SOURCES, SOURCE_NAMES } from './source-name';
import { sourceTryJsonSchema, tryFromJson, tryToJson } from './try-json';

const forecastHourSchema = z.strictObject({
  time,
  temperatureC,
  pressureHpa: pressureHpa.describe('Station pressure at elevationM [hPa].'),
  pressureFrom: z
    .enum(['station', 'altimeter', 'sea-level', 'standard'])
    .describe('What the station pressure was derived from; standard means it is an estimate.'),
  relativeHumidity,
  spreadK: z.number().min(0).nullable().describe("Standard deviation of an ensemble's temperature [K]."),
  origin: z
    .enum(['forecast', 'typed', 'between', 'filled'])
    .describe('filled: in a gap of at most six hours, on a curve through the hours around it.'),
  temperatureBy: z.enum(SOURCE_NAMES),
  pressureBy: z.enum(PRESSURE_SOURCES),
  ...skyFields,
});

const leftOutJsonSchema = z.strictObject({ time, code: z.enum(CONTRADICTIONS) });

/** A forecast as our own API answers it, as the browser keeps it and as a stored event refers to it. */
export const forecastJsonSchema = z
  .strictObject({
    latitude: z.number().min(-90).max(90),
    longitude: z.number().min(-180).max(180),
    elevationM,
    elevationFrom: z.enum(['given', 'service']).describe("service: the service's own height for the place."),
    modelElevationM: z.number().nullable(),
    by: z.enum(SOURCE_NAMES),
    name: z.string(),
    attribution: z.string().describe('To be shown with the hours.'),
    attributionUrl: z.string().nullable(),
    issuedAt: time.nullable().describe('When the forecast was made; null where the service does not say.'),
    fetchedAt: time.nullable(),
    freshness: z.enum(['fresh', 'stale']).describe('stale: no service answered, this is the last good copy.'),
    freshUntil: time,
    tries: z.array(sourceTryJsonSchema).describe('Services that were asked and not used, and why.'),
    missing: z.array(time).describe('Hours the service lists without a value, in gaps too long to fill.'),
    leftOut: z
      .array(leftOutJsonSchema)
      .optional()
      .describe(
        'Hours the service gave that cannot be right, and why; filled or missing like any other gap.',
      ),
    hours: z.array(forecastHourSchema),
  })
  .meta({ id: 'Forecast' });

export type ForecastJson = z.output<typeof forecastJsonSchema>;

/** Binary fractions leave noise in the twelfth digit of -10.0 °C; a millionth of a unit is none of a service's news. */
const tidy = (value: number): number => Number(value.toFixed(6));

const isoOrNull = (at: Instant | null): string | null => (at === null ? null : isoUtc(at));

export function forecastToJson(forecast: Forecast): ForecastJson {
  const { source } = forecast;
  return {
    ...forecast.place,
    elevationM: forecast.elevation,
    elevationFrom: forecast.elevationFrom,
    modelElevationM: source.modelElevation,
    by: forecast.by,
    name: source.name,
    attribution: source.attribution,
    attributionUrl: source.attributionUrl,
    issuedAt: isoOrNull(source.issuedAt),
    fetchedAt: isoOrNull(source.fetchedAt),
    freshness: forecast.freshness,
    freshUntil: isoUtc(forecast.freshUntil),
    tries: forecast.tries.map(tryToJson),
    missing: forecast.missing.map(isoUtc),
    leftOut: forecast.leftOut.map(({ at, code }) => ({ time: isoUtc(at), code })),
    hours: forecast.hours.map((hour) => ({
      time: isoUtc(hour.at),
      temperatureC: tidy(kelvinToCelsius(hour.temperature)),
      pressureHpa: tidy(pascalToHectopascal(hour.pressure)),
      pressureFrom: hour.pressureFrom,
      relativeHumidity: tidy(hour.relativeHumidity),
      spreadK: hour.spread === null ? null : tidy(hour.spread),
      origin: hour.origin,
      temperatureBy: hour.temperatureBy,
      pressureBy: hour.pressureBy,
      ...skyToJson(hour),
    })),
  };
}

/** Why stored or sent data is no forecast: the first field that does not fit. */
export type ForecastJsonProblem = { readonly code: 'not-a-forecast'; readonly field: string };

/** Reads unknown data as a forecast; hours must be in order. */
export function forecastFromJson(data: unknown): Result<Forecast, ForecastJsonProblem> {
  const parsed = forecastJsonSchema.safeParse(data);
  if (!parsed.success)
    return fail({ code: 'not-a-forecast', field: parsed.error.issues[0]?.path.map(String).join('.') ?? '' });
  const json = parsed.data;
  const hours = json.hours.map(hourFromJson);
  const disorder = hours.findIndex((hour, i) => hour.at <= (hours[i - 1]?.at ?? Number.NEGATIVE_INFINITY));
  if (disorder >= 0) return fail({ code: 'not-a-forecast', field: `hours.${disorder}.time` });
  return ok({
    hours,
    missing: json.missing.map(instantFromJson),
    leftOut: (json.leftOut ?? []).map(({ time: at, code }) => ({ at: instantFromJson(at), code })),
    elevation: metre(json.elevationM),
    elevationFrom: json.elevationFrom,
    place: { latitude: json.latitude, longitude: json.longitude },
    by: json.by,
    source: {
      name: json.name,
      attribution: json.attribution,
      attributionUrl: json.attributionUrl,
      issuedAt: instantOrNull(json.issuedAt),
      fetchedAt: instantOrNull(json.fetchedAt),
      modelElevation: json.modelElevationM === null ? null : metre(json.modelElevationM),
    },
    freshness: json.freshness,
    freshUntil: instantFromJson(json.freshUntil),
    tries: json.tries.map(tryFromJson),
  });
}

function hourFromJson(json: ForecastJson['hours'][number]): ForecastHour {
  return {
    at: instantFromJson(json.time),
    temperature: celsiusToKelvin(json.temperatureC),
    pressure: hectopascalToPascal(json.pressureHpa),
    pressureFrom: json.pressureFrom,
    relativeHumidity: ratio(json.relativeHumidity),
    spread: json.spreadK === null ? null : kelvinDifference(json.spreadK),
    origin: json.origin,
    temperatureBy: json.temperatureBy,
    pressureBy: json.pressureBy,
    ...skyFromJson(json),
  };
}

function instantOrNull(iso: string | null): Instant | null {
  return iso === null ? null : instantFromJson(iso);
}
