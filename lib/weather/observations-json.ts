import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { elevationM, time } from '@/lib/contract/numbers';
import { isoUtc } from '@/lib/time/zone';
import {
  celsiusToKelvin,
  hectopascalToPascal,
  kelvinToCelsius,
  pascalToHectopascal,
} from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';
import { metre, speedMs } from '@/lib/units/quantity';
import { distanceM } from './distance';
import type { Coordinates } from './place';
import type { PlacedObservation } from './stations/observation';
import type { Observed } from './stations/observed';

const observationSchema = z.strictObject({
  station: z.string().check(z.maxLength(10)),
  name: z.string().check(z.maxLength(200)),
  latitude: z.number().check(z.minimum(-90), z.maximum(90)),
  longitude: z.number().check(z.minimum(-180), z.maximum(180)),
  elevationM,
  distanceM: z.number().check(z.minimum(0), about('From the place that was asked about.')),
  time,
  temperatureC: z.number(),
  dewPointC: z.nullable(z.number()),
  altimeterHpa: z
    .nullable(z.number())
    .check(about('Altimeter setting (QNH), not the pressure at the station.')),
  windMs: z.nullable(z.number()),
});

export const observationsJsonSchema = z
  .strictObject({
    observations: z.array(observationSchema).check(about('Nearest first, as observed at the station.')),
    leftOut: z
      .array(z.strictObject({ station: z.string(), code: z.string() }))
      .check(about('Stations that were asked and not used, and why.')),
    attribution: z.string(),
    attributionUrl: z.string(),
  })
  .register(z.globalRegistry, { id: 'Stations' });

export type ObservationsJson = z.output<typeof observationsJsonSchema>;

const CREDIT = {
  attribution: 'Weather stations: US National Weather Service',
  attributionUrl: 'https://www.weather.gov/',
} as const;

const hundredths = (value: number): number => plainNumber(value, 2);

export function observationsToJson({ observations, leftOut }: Observed, from: Coordinates): ObservationsJson {
  return {
    observations: observations.map(({ at, place, elevation, ...each }) => ({
      station: each.station,
      name: each.name,
      ...place,
      elevationM: elevation,
      distanceM: Math.round(distanceM(place, from)),
      time: isoUtc(at),
      temperatureC: hundredths(kelvinToCelsius(each.temperature)),
      dewPointC: each.dewPoint === null ? null : hundredths(kelvinToCelsius(each.dewPoint)),
      altimeterHpa: each.altimeter === null ? null : hundredths(pascalToHectopascal(each.altimeter)),
      windMs: each.wind === null ? null : hundredths(each.wind),
    })),
    leftOut: [...leftOut],
    ...CREDIT,
  };
}

/** An observation in the core's own terms again. */
export function observationFromJson(json: ObservationsJson['observations'][number]): PlacedObservation {
  return {
    station: json.station,
    name: json.name,
    place: { latitude: json.latitude, longitude: json.longitude },
    elevation: metre(json.elevationM),
    at: instantFromJson(json.time),
    temperature: celsiusToKelvin(json.temperatureC),
    dewPoint: json.dewPointC === null ? null : celsiusToKelvin(json.dewPointC),
    altimeter: json.altimeterHpa === null ? null : hectopascalToPascal(json.altimeterHpa),
    wind: json.windMs === null ? null : speedMs(json.windMs),
  };
}
