import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { type Metre, metre } from '@/lib/units/quantity';

export type TrackPoint = {
  /** Degrees, north and east positive. */
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation: Metre | null;
  readonly at: Instant | null;
};

/** A track as a file gave it: pieces of way, each with two points at least. */
export type GpxTrack = {
  readonly name: string;
  readonly segments: readonly (readonly TrackPoint[])[];
  /** True where it was a planned route and not a recording. */
  readonly route: boolean;
};

/** A point of the profile: how far along, how high, when. */
export type ProfilePoint = {
  readonly along: Metre;
  readonly elevation: Metre | null;
  readonly at: Instant | null;
};

/** A point of the way that a map can be asked about. */
export type Spot = Pick<TrackPoint, 'latitude' | 'longitude'> & { readonly along: Metre };

export type Profile = {
  readonly name: string;
  readonly points: readonly ProfilePoint[];
  readonly start: { readonly latitude: number; readonly longitude: number };
  readonly segments: number;
  /** Points of the file, before any were left out. */
  readonly pointsInFile: number;
  /** Points whose time ran backwards. */
  readonly backwards: number;
  /** All points have a time, or none counts. */
  readonly timed: boolean;
  /** None: the file holds no height at all. Some: gaps were filled straight. Asked: they are the ground's, from a service. */
  readonly elevations: 'all' | 'some' | 'none' | 'asked';
  /** Where heights can be asked for, evenly along; empty where the file has its own. */
  readonly spots: readonly Spot[];
};

/** As many heights as the service gives at once. */
const MOST_SPOTS = 100;

/** Mean radius of the earth [m]. Source: IUGG (Moritz, Geodetic Reference System 1980, Bull. Géod. 54 (1980) 395). */
const EARTH_RADIUS = 6_371_008.8;

/**
 * Distance over ground [m]: haversine, hav(d/R) = hav(Δφ) + cos φ1 cos φ2 hav(Δλ). Within 0.6 % of the ellipsoid.
 */
export function distanceBetween(
  a: Pick<TrackPoint, 'latitude' | 'longitude'>,
  b: Pick<TrackPoint, 'latitude' | 'longitude'>,
): Metre {
  const radians = (degrees: number) => (degrees * Math.PI) / 180;
  const haversine = (angle: number) => Math.sin(angle / 2) ** 2;
  const [phi1, phi2] = [radians(a.latitude), radians(b.latitude)];
  const h =
    haversine(phi2 - phi1) + Math.cos(phi1) * Math.cos(phi2) * haversine(radians(b.longitude - a.longitude));
  return metre(2 * EARTH_RADIUS * Math.asin(Math.min(1, Math.sqrt(h))));
}

/** All segments one after the other; the way between two of them counts as ridden. */
export function profileOf(track: GpxTrack): Profile {
  const all = track.segments.flat();
  const timed = all.every(({ at }) => at !== null);
  const inOrder = timed ? rising(all) : all;
  let along = 0;
  const points = inOrder.map((point, i): ProfilePoint => {
    const before = inOrder[i - 1];
    if (before !== undefined) along += distanceBetween(before, point);
    return { along: metre(along), elevation: point.elevation, at: timed ? point.at : null };
  });
  const known = points.filter(({ elevation }) => elevation !== null).length;
  const { latitude, longitude } = inOrder[0]!;
  return {
    name: track.name,
    points: known === 0 ? points : withElevations(points),
    start: { latitude, longitude },
    segments: track.segments.length,
    pointsInFile: all.length,
    backwards: all.length - inOrder.length,
    timed,
    elevations: known === 0 ? 'none' : known === points.length ? 'all' : 'some',
    spots: known === 0 ? spotsOf(inOrder, points) : [],
  };
}

/** The first point, the last one, and between them the first after each like part of the way. */
function spotsOf(track: readonly TrackPoint[], points: readonly ProfilePoint[]): readonly Spot[] {
  const length = points.at(-1)!.along;
  const spots: Spot[] = [];
  for (const [i, { along }] of points.entries()) {
    const due = (length * spots.length) / (MOST_SPOTS - 1);
    // Adding up leaves the last part a hair short.
    if (along < due * (1 - 1e-9) && i < points.length - 1) continue;
    const { latitude, longitude } = track[i]!;
    if (spots.length === MOST_SPOTS) spots.pop();
    spots.push({ latitude, longitude, along });
  }
  return spots;
}

/** A profile without heights with those of its spots, in their order; straight between them. */
export function withHeights(profile: Profile, heights: readonly Metre[]): Profile {
  const { spots } = profile;
  let next = 0;
  const points = profile.points.map((point) => {
    while (next < spots.length - 1 && spots[next]!.along < point.along) next += 1;
    const at = (i: number) => ({ along: spots[i]!.along, elevation: heights[i] ?? null, at: null });
    return { ...point, elevation: straight(at(Math.max(0, next - 1)), at(next), point.along) };
  });
  return { ...profile, points, elevations: 'asked', spots: [] };
}

/**
 * Without the points that lie before one that came earlier in the file: a clock that was set, a file glued wrongly. Several
 * at one time are all kept, as a recorder writes them that counts whole seconds.
 */
function rising(points: readonly TrackPoint[]): readonly TrackPoint[] {
  let latest = Number.NEGATIVE_INFINITY;
  return points.filter(({ at }) => {
    if (at === null || at < latest) return false;
    latest = at;
    return true;
  });
}

/** Missing heights from their neighbours, straight over distance; the ends are held. */
function withElevations(points: readonly ProfilePoint[]): readonly ProfilePoint[] {
  const before: (ProfilePoint | undefined)[] = [];
  let last: ProfilePoint | undefined;
  for (const point of points) {
    if (point.elevation !== null) last = point;
    before.push(last);
  }
  const filled: ProfilePoint[] = [];
  let next: ProfilePoint | undefined;
  for (let i = points.length - 1; i >= 0; i--) {
    const point = points[i]!;
    if (point.elevation !== null) next = point;
    filled.push({ ...point, elevation: straight(before[i], next, point.along) });
  }
  return filled.reverse();
}

function straight(a: ProfilePoint | undefined, b: ProfilePoint | undefined, along: number): Metre | null {
  const [low, high] = [a?.elevation ?? b?.elevation ?? null, b?.elevation ?? a?.elevation ?? null];
  if (low === null || high === null) return null;
  if (a === undefined || b === undefined || b.along === a.along) return low;
  return metre(low + ((high - low) * (along - a.along)) / (b.along - a.along));
}

/**
 * Fewer points with the same way in them: of every bucket its first, lowest, highest and last point are kept, so the
 * lowest and the highest air of the ride are never lost.
 */
export function simplified(points: readonly ProfilePoint[], most: number): readonly ProfilePoint[] {
  if (points.length <= most) return points;
  const buckets = Math.max(1, Math.floor(most / 4));
  return Array.from({ length: buckets }, (_, bucket) => {
    const from = Math.floor((bucket * points.length) / buckets);
    const to = Math.floor(((bucket + 1) * points.length) / buckets);
    return [...keptOf(points, from, to)].sort((a, b) => a - b).map((i) => points[i]!);
  }).flat();
}

function keptOf(points: readonly ProfilePoint[], from: number, to: number): ReadonlySet<number> {
  const height = (i: number) => points[i]!.elevation ?? 0;
  let [low, high] = [from, from];
  for (let i = from; i < to; i++) {
    if (height(i) < height(low)) low = i;
    if (height(i) > height(high)) high = i;
  }
  return new Set([from, low, high, to - 1]);
}

/** The profile as a rider without a recorder would ride it: at one speed from a start. */
export function atSpeed(
  points: readonly ProfilePoint[],
  start: Instant,
  metresPerSecond: number,
): readonly ProfilePoint[] {
  return points.map((point) => ({
    ...point,
    at: instant(Math.round(start + (point.along / metresPerSecond) * 1000)),
  }));
}

/** The recorded pace on another day. */
export function startedAt(points: readonly ProfilePoint[], start: Instant): readonly ProfilePoint[] {
  const first = points[0]?.at ?? null;
  if (first === null) return points;
  return points.map((point) => ({
    ...point,
    at: point.at === null ? null : instant(point.at - first + start),
  }));
}

/** Standing still for this long is a stop. */
export const SHORTEST_STOP_MS = 10 * MINUTE_MS;
