import type { Sky } from '@/lib/hours/series';
import { metre, ratio, speedMs } from '@/lib/units/quantity';
import type { OpenMeteoHours } from './schema';

/** What is asked for the sky, and the unit each must be in. */
const FIELDS = { cloud_cover: '%', wind_speed_10m: 'm/s', snow_depth: 'm', is_day: '' } as const;

/** Names to ask for. */
export const SKY = Object.keys(FIELDS).join(',');

/**
 * The sky of a row. It is a welcome extra: what is missing, in another unit or out of all bounds is null, and the hour is
 * as good as without it.
 */
export function skyOf({ hourly, hourly_units }: OpenMeteoHours, row: number): Sky {
  const told = (name: keyof typeof FIELDS): number | null =>
    (hourly_units[name] ?? '') === FIELDS[name] ? (hourly[name]?.[row] ?? null) : null;
  const [cloud, wind, snow, day] = [
    told('cloud_cover'),
    told('wind_speed_10m'),
    told('snow_depth'),
    told('is_day'),
  ];
  return {
    cloudCover: cloud === null || cloud < 0 || cloud > 100 ? null : ratio(cloud / 100),
    wind: wind === null || wind < 0 ? null : speedMs(wind),
    snowDepth: snow === null || snow < 0 ? null : metre(snow),
    daylight: day === null ? null : day !== 0,
  };
}
