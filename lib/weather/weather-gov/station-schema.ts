import * as z from 'zod';

const point = z.object({ coordinates: z.tuple([z.number(), z.number()]).rest(z.number()) });
const metres = z.object({ unitCode: z.string(), value: z.number() });

/** The codes of stations, as they go into an address. */
const stationId = z.string().regex(/^[A-Z0-9]{3,10}$/);

const MOST_STATIONS = 500;

/** The stations of a grid cell, nearest first as a rule. */
export const stationListSchema = z.object({
  features: z
    .array(
      z.object({
        geometry: point,
        properties: z.object({ stationIdentifier: stationId, name: z.string().max(200), elevation: metres }),
      }),
    )
    .max(MOST_STATIONS),
});

/** A number with its unit and what the service's own checks make of it. */
const measured = z.object({
  unitCode: z.string(),
  value: z.number().nullable(),
  qualityControl: z.string().optional(),
});

/** The latest observation of a station. `barometricPressure` is the altimeter setting. */
export const latestSchema = z.object({
  geometry: point,
  properties: z.object({
    station: z.string().max(200),
    elevation: metres,
    timestamp: z.string(),
    rawMessage: z.string().max(4000).nullish(),
    temperature: measured,
    dewpoint: measured.optional(),
    relativeHumidity: measured.optional(),
    barometricPressure: measured.optional(),
    seaLevelPressure: measured.optional(),
    windSpeed: measured.optional(),
  }),
});

export type StationList = z.output<typeof stationListSchema>;
export type Latest = z.output<typeof latestSchema>['properties'] &
  Pick<z.output<typeof latestSchema>, 'geometry'>;
export type MeasuredValue = z.output<typeof measured>;
