/** The forecast services, in the order in which they are asked outside the Nordic area. */
export const SOURCE_NAMES = ['open-meteo', 'met-norway', 'weather-gov'] as const;
export type SourceName = (typeof SOURCE_NAMES)[number];

/** Who the pressure of an hour came from; the standard atmosphere is an estimate. */
export const PRESSURE_SOURCES = [...SOURCE_NAMES, 'standard-atmosphere'] as const;
export type PressureSource = (typeof PRESSURE_SOURCES)[number];
