import * as z from 'zod';

/** Values of one variable; null past a model's horizon and in its gaps. */
const column = z.array(z.number().nullable());

/** A column that is welcome and not needed: one that cannot be read is as good as none. */
const extraColumn = column.optional().catch(undefined);
const extraUnit = z.string().optional().catch(undefined);

/** Seconds since 1970 (asked for), or clock times that all carry the answer's one offset from UTC. */
const times = z.union([z.array(z.number()), z.array(z.string())]);

const units = z.object({
  time: z.enum(['unixtime', 'iso8601']),
  temperature_2m: z.string(),
  dew_point_2m: z.string().optional(),
  relative_humidity_2m: z.string().optional(),
  surface_pressure: z.string().optional(),
  pressure_msl: z.string().optional(),
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
  timezone: z.string().optional(),
  /** Height the numbers are for [m]. */
  elevation: z.number(),
  hourly_units: units,
  hourly: z.object({
    time: times,
    temperature_2m: column,
    dew_point_2m: column.optional(),
    relative_humidity_2m: column.optional(),
    surface_pressure: column.optional(),
    pressure_msl: column.optional(),
    cloud_cover: extraColumn,
    wind_speed_10m: extraColumn,
    snow_depth: extraColumn,
    is_day: extraColumn,
  }),
});

/** Mean and spread, or one column per member (`temperature_2m_member01` ...). */
export const openMeteoEnsembleSchema = z.object({
  latitude: z.number().optional(),
  longitude: z.number().optional(),
  utc_offset_seconds: z.number(),
  hourly_units: z.object({ time: z.enum(['unixtime', 'iso8601']) }).catchall(z.string()),
  hourly: z.object({ time: times }).catchall(column),
});

export const openMeteoElevationSchema = z.object({ elevation: z.array(z.number()).min(1) });

/** No match: `results` is absent. */
export const openMeteoPlacesSchema = z.object({
  results: z
    .array(
      z.object({
        id: z.number(),
        name: z.string(),
        latitude: z.number(),
        longitude: z.number(),
        elevation: z.number().optional(),
        timezone: z.string().optional(),
        country: z.string().optional(),
        admin1: z.string().optional(),
        admin2: z.string().optional(),
        population: z.number().optional(),
      }),
    )
    .optional(),
});

export type OpenMeteoHours = z.output<typeof openMeteoHoursSchema>;
export type OpenMeteoEnsemble = z.output<typeof openMeteoEnsembleSchema>;
export type OpenMeteoPlaces = z.output<typeof openMeteoPlacesSchema>;
