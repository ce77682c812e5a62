import * as z from 'zod/mini';

const point = z.object({ coordinates: z.tuple([z.number(), z.number()], z.number()) });
const metres = z.object({ unitCode: z.string(), value: z.number() });

/** The codes of stations, as they go into an address. */
const stationId = z.string().check(z.regex(/^[A-Z0-9]{3,10}$/));

const MOST_STATIONS = 500;

/** The stations of a grid cell, nearest first as a rule. */
export const stationListSchema = z.object({
  features: z
    .array(
      z.object({
        geometry: point,
        properties: z.object({
          stationIdentifier: stationId,
          name: z.string().check(z.maxLength(200)),
          elevation: metres,
        }),
      }),
    )
    .check(z.maxLength(MOST_STATIONS)),
});

/** A number with its unit and what the service's own checks make of it. */
const measured = z.object({
  unitCode: z.string(),
  value: z.nullable(z.number()),
  qualityControl: z.optional(z.string()),
});

/** The latest observation of a station. `barometricPressure` is the altimeter setting. */
export const latestSchema = z.object({
  geometry: point,
  properties: z.object({
    station: z.string().check(z.maxLength(200)),
    elevation: metres,
    timestamp: z.string(),
    rawMessage: z.nullish(z.string().check(z.maxLength(4000))),
    temperature: measured,
    dewpoint: z.optional(measured),
    relativeHumidity: z.optional(measured),
    barometricPressure: z.optional(measured),
    seaLevelPressure: z.optional(measured),
    windSpeed: z.optional(measured),
  }),
});

export type StationList = z.output<typeof stationListSchema>;
export type Latest = z.output<typeof latestSchema>['properties'] &
  Pick<z.output<typeof latestSchema>, 'geometry'>;
export type MeasuredValue = z.output<typeof measured>;
