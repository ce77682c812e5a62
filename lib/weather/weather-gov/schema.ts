import * as z from 'zod/mini';

/** Which grid cell a point lies in. The address of the grid that comes along is not used: only these three are. */
export const weatherGovPointSchema = z.object({
  properties: z.object({
    gridId: z.string().check(z.regex(/^[A-Z]{3}$/)),
    gridX: z.int().check(z.minimum(0), z.maximum(9999)),
    gridY: z.int().check(z.minimum(0), z.maximum(9999)),
  }),
});

/** A week in hours and then some. */
const MOST_RUNS = 1000;

const layer = z.object({
  uom: z.optional(z.string()),
  values: z
    .array(z.object({ validTime: z.string(), value: z.nullable(z.number()) }))
    .check(z.maxLength(MOST_RUNS)),
});

/** The raw grid: each layer in runs of its own, over intervals such as `2022-02-03T21:00:00+00:00/PT5H`. */
export const weatherGovGridSchema = z.object({
  /** The outline of the cell. */
  geometry: z.nullish(z.object({ coordinates: z.array(z.array(z.tuple([z.number(), z.number()]))) })),
  properties: z.object({
    updateTime: z.string(),
    elevation: z.object({ unitCode: z.string(), value: z.number() }),
    temperature: layer,
    dewpoint: z.optional(layer),
    relativeHumidity: z.optional(layer),
    /** Welcome and not needed: one that cannot be read is as good as none. */
    skyCover: z.catch(z.optional(layer), undefined),
    windSpeed: z.catch(z.optional(layer), undefined),
  }),
});

export type WeatherGovPoint = z.output<typeof weatherGovPointSchema>['properties'];
export type WeatherGovGrid = z.output<typeof weatherGovGridSchema>;
export type WeatherGovLayer = z.output<typeof layer>;
