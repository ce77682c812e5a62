import type { Coordinates } from './place';

/** Mean radius of the earth [m]. Source: IUGG, GRS 80. */
const EARTH_RADIUS_M = 6_371_009;

/** Along the great circle [m]: d = 2 R asin sqrt(sin²(Δφ/2) + cos φ1 cos φ2 sin²(Δλ/2)), the haversine formula. */
export function distanceM(a: Coordinates, b: Coordinates): number {
  const rad = Math.PI / 180;
  const half = (from: number, to: number): number => Math.sin(((to - from) * rad) / 2) ** 2;
  const chord =
    half(a.latitude, b.latitude) +
    Math.cos(a.latitude * rad) * Math.cos(b.latitude * rad) * half(a.longitude, b.longitude);
  // NaN where a coordinate is none: farther than any limit, since nothing compares with it.
  return 2 * EARTH_RADIUS_M * Math.asin(Math.sqrt(Math.min(1, chord)));
}
