import * as z from 'zod/mini';

/** Values of one variable; null past a model's horizon and in its gaps. */
const column = z.array(z.nullable(z.number()));

/** A column that is welcome and not needed: one that cannot be read is as good as none. */
const extraColumn = z.catch(z.optional(column), undefined);
const extraUnit = z.catch(z.optional(z.string()), undefined);

/** Seconds since 1970 (asked for), or clock times that all carry the answer's one offset from UTC. */
const times = z.union([z.array(z.number()), z.array(z.string())]);

const units = z.object({
  time: z.enum(['unixtime', 'iso8601']),
  temperature_2m: z.string(),
  dew_point_2m: z.optional(z.string()),
  relative_humidity_2m: z.optional(z.string()),
  surface_pressure: z.optional(z.string()),
  pressure_msl: z.optional(z.string()),
  cloud_cover: extraUnit,
  wind_speed_10m: extraUnit,
  snow_depth: extraUnit,
  is_day: extraUnit,
});

/** The forecast and the archive answer in the same shape. */
export const openMeteoHoursSchema = z.object({
  latitude: z.number(),
  longitude: z.number(),
  /** Seconds east of UTC. */
  utc_offset_seconds: z.number(),
  timezone: z.optional(z.string()),
  /** Height the numbers are for [m]. */
  elevation: z.number(),
  hourly_units: units,
  hourly: z.object({
    time: times,
    temperature_2m: column,
    dew_point_2m: z.optional(column),
    relative_humidity_2m: z.optional(column),
    surface_pressure: z.optional(column),
    pressure_msl: z.optional(column),
    cloud_cover: extraColumn,
    wind_speed_10m: extraColumn,
    snow_depth: extraColumn,
    is_day: extraColumn,
  }),
});

/** Mean and spread, or one column per member (`temperature_2m_member01` ...). */
export const openMeteoEnsembleSchema = z.object({
  latitude: z.optional(z.number()),
  longitude: z.optional(z.number()),
  utc_offset_seconds: z.number(),
  hourly_units: z.catchall(z.object({ time: z.enum(['unixtime', 'iso8601']) }), z.string()),
  hourly: z.catchall(z.object({ time: times }), column),
});

export const openMeteoElevationSchema = z.object({ elevation: z.array(z.number()).check(z.minLength(1)) });

/** No match: `results` is absent. */
export const openMeteoPlacesSchema = z.object({
  results: z.optional(
    z.array(
      z.object({
        id: z.number(),
        name: z.string(),
        latitude: z.number(),
        longitude: z.number(),
        elevation: z.optional(z.number()),
        timezone: z.optional(z.string()),
        country: z.optional(z.string()),
        admin1: z.optional(z.string()),
        admin2: z.optional(z.string()),
        population: z.optional(z.number()),
      }),
    ),
  ),
});

export type OpenMeteoHours = z.output<typeof openMeteoHoursSchema>;
export type OpenMeteoEnsemble = z.output<typeof openMeteoEnsembleSchema>;
export type OpenMeteoPlaces = z.output<typeof openMeteoPlacesSchema>;
