import { RANGE, within } from '@/lib/air/ranges';
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
  return distance(place, site) <= FARTHEST_CELL_M;
}

/** Is it for this height? */
export function checkHeight({ elevation }: ServiceAnswer, { site, repeatsElevation }: Expected): Finding {
  if (!within(elevation, RANGE.elevation))
    return whole({ code: 'implausible', field: 'elevation', value: elevation });
  if (site.elevation === null) return NOTHING;
  const most = repeatsElevation ? REPEATED_HEIGHT_M : OWN_HEIGHT_M;
  return Math.abs(elevation - site.elevation) <= most ? NOTHING : whole({ code: 'other-height' });
}

/** Mean radius of the earth [m]. Source: IUGG, GRS 80. */
const EARTH_RADIUS_M = 6_371_009;

/** Along the great circle [m]: d = 2 R asin sqrt(sin²(Δφ/2) + cos φ1 cos φ2 sin²(Δλ/2)), the haversine formula. */
function distance(a: Coordinates, b: Coordinates): number {
  const rad = Math.PI / 180;
  const half = (from: number, to: number): number => Math.sin(((to - from) * rad) / 2) ** 2;
  const chord =
    half(a.latitude, b.latitude) +
    Math.cos(a.latitude * rad) * Math.cos(b.latitude * rad) * half(a.longitude, b.longitude);
  // NaN where a coordinate is none: farther than any limit, since nothing compares with it.
  return 2 * EARTH_RADIUS_M * Math.asin(Math.sqrt(Math.min(1, chord)));
}
