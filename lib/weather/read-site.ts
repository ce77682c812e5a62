import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Metre, metre } from '@/lib/units/quantity';
import type { Coordinates, Site } from './place';
import type { SiteProblem } from './problem';
import { roundCoordinate } from './request/address';

/** Checks where the air is wanted, and rounds it as it goes out and into keys. */
export function readSite(
  place: Coordinates & { readonly elevation: Metre | null },
): Result<Site, SiteProblem> {
  const { latitude, longitude, elevation } = place;
  if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180))
    return fail({ code: 'not-a-place', latitude, longitude });
  if (elevation !== null && !within(elevation, RANGE.elevation))
    return fail({ code: 'elevation-out-of-range', elevation });
  return ok({
    latitude: roundCoordinate(latitude),
    longitude: roundCoordinate(longitude),
    // Half a metre is 0.006 % of density, and whole metres make one key of many.
    elevation: elevation === null ? null : metre(Math.round(elevation)),
  });
}
