import { RANGE, within } from '@/lib/air/ranges';
import { distanceM } from '@/lib/weather/distance';
import type { Coordinates } from '@/lib/weather/place';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import type { Expected } from './expected';
import { type Finding, NOTHING, whole } from './finding';
import { FARTHEST_CELL_M, OWN_HEIGHT_M, REPEATED_HEIGHT_M } from './limits';

/** Is it for this place? */
export function checkPlace({ place }: ServiceAnswer, { site }: Expected): Finding {
  return place === null || isNear(place, site) ? NOTHING : whole({ code: 'other-place' });
}

/** May an answer for the one stand for the other? */
export function isNear(place: Coordinates, site: Coordinates): boolean {
  return distanceM(place, site) <= FARTHEST_CELL_M;
}

/** Is it for this height? */
export function checkHeight({ elevation }: ServiceAnswer, { site, repeatsElevation }: Expected): Finding {
  if (!within(elevation, RANGE.elevation))
    return whole({ code: 'implausible', field: 'elevation', value: elevation });
  if (site.elevation === null) return NOTHING;
  const most = repeatsElevation ? REPEATED_HEIGHT_M : OWN_HEIGHT_M;
  return Math.abs(elevation - site.elevation) <= most ? NOTHING : whole({ code: 'other-height' });
}
