import * as z from 'zod/mini';

const value = z.nullish(z.number());

/** Welcome and not needed: one that cannot be read is as good as none. */
const extra = z.catch(value, null);

const details = z.object({
  air_temperature: value,
  relative_humidity: value,
  dew_point_temperature: value,
  air_pressure_at_sea_level: value,
  air_temperature_percentile_10: value,
  air_temperature_percentile_90: value,
  cloud_area_fraction: extra,
  wind_speed: extra,
});

/** Locationforecast 2.0, `complete`: GeoJSON with the altitude in use as third coordinate. */
export const metNorwaySchema = z.object({
  geometry: z.object({ coordinates: z.tuple([z.number(), z.number(), z.number()]) }),
  properties: z.object({
    meta: z.object({
      updated_at: z.string(),
      /** Keys vary with the area. */
      units: z.record(z.string(), z.string()),
    }),
    timeseries: z
      .array(z.object({ time: z.string(), data: z.object({ instant: z.object({ details }) }) }))
      .check(z.minLength(1)),
  }),
});

export type MetNorwayForecast = z.output<typeof metNorwaySchema>;
export type MetNorwayDetails = z.output<typeof details>;
