import type { Hour } from '@/lib/hours/series';
import { CALM_WIND, CLEAR_SKY, COLD_FROM, COLD_WHOLE, SNOW_COVER_DEPTH } from './judgement';

/** 0 up to `none`, 1 from `whole` on (or the other way round), a straight line between. */
export function ramp(value: number, { none, whole }: { readonly none: number; readonly whole: number }) {
  return Math.min(1, Math.max(0, (value - none) / (whole - none)));
}

/** How far an hour's own temperature has come into the cold: 0 to 1. */
export function coldness({ temperature }: Pick<Hour, 'temperature'>): number {
  return ramp(temperature, { none: COLD_FROM, whole: COLD_WHOLE });
}

/**
 * Whether an hour's temperature may be a model's own. Where nobody says who made it, it may: whoever types hours copies
 * them from a page that does not tell, and most pages show a model's.
 */
export function mayBeRawModel({ rawModel }: Pick<Hour, 'rawModel'>): boolean {
  return rawModel !== false;
}

/**
 * How much of a clear, calm, cold night over snow an hour is: 0 to 1. Where the clouds are not told, none: nobody can
 * know. Of what else is not told, the side that makes the night colder is taken.
 */
export function clearCalm(hour: Hour): number {
  const { sky } = hour;
  if (sky === undefined || sky.cloudCover === null || sky.daylight === true) return 0;
  const clear = ramp(sky.cloudCover, CLEAR_SKY);
  const calm = sky.wind === null ? 1 : ramp(sky.wind, CALM_WIND);
  const snow = sky.snowDepth === null ? 1 : ramp(sky.snowDepth, { none: 0, whole: SNOW_COVER_DEPTH });
  return clear * calm * snow * coldness(hour);
}

/** How much of a cold night whose sky nobody told an hour is: 0 to 1. It may be a clear calm one. */
export function unknownSky(hour: Hour): number {
  const { sky } = hour;
  const told = sky !== undefined && (sky.cloudCover !== null || sky.daylight === true);
  return told ? 0 : coldness(hour);
}
