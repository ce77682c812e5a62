import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { type Metre, metre } from '@/lib/units/quantity';

export type RidePoint = { readonly at: Instant; readonly elevation: Metre };

/** Where a leg ends and the next begins: a place one may stop at. */
export type RideStop = {
  /** As typed; empty for a turning point of a track. */
  readonly name: string;
  readonly elevation: Metre;
  readonly arrive: Instant;
  readonly leave: Instant;
};

export type Ride = {
  /** At least two, in order of time. */
  readonly stops: readonly RideStop[];
  /** The way between, strictly rising in time; the stops are among them. */
  readonly points: readonly RidePoint[];
  /** Length of the way; null where it is not known. */
  readonly distance: Metre | null;
};

export type RideProblem =
  | { readonly code: 'too-few-places' }
  /** Place `place` is reached before the one before it is left. */
  | { readonly code: 'place-too-early'; readonly place: number }
  | { readonly code: 'stop-negative'; readonly place: number }
  | { readonly code: 'too-many-places'; readonly limit: number }
  | { readonly code: 'ride-too-long'; readonly limitHours: number };

export type Leg = { readonly from: RideStop; readonly to: RideStop };

/** More places than this in one ride are refused: a plan holds at most sixty runs. */
export const MOST_PLACES = 41;
/** A longer ride has a night's sleep in it: plan it day by day. */
const LONGEST_RIDE_HOURS = 36;

export function legsOf({ stops }: Pick<Ride, 'stops'>): readonly Leg[] {
  return stops.slice(1).map((to, i) => ({ from: stops[i]!, to }));
}

/** Time on the move, without the stops. */
export function movingMs(ride: Pick<Ride, 'stops'>): number {
  return legsOf(ride).reduce((sum, { from, to }) => sum + (to.arrive - from.leave), 0);
}

/** Why the places are no ride; null where they are one. */
export function rideProblem(stops: readonly RideStop[]): RideProblem | null {
  if (stops.length < 2) return { code: 'too-few-places' };
  if (stops.length > MOST_PLACES) return { code: 'too-many-places', limit: MOST_PLACES };
  const backwards = stops.findIndex(({ arrive, leave }) => leave < arrive);
  if (backwards !== -1) return { code: 'stop-negative', place: backwards };
  const early = stops.findIndex(({ arrive }, i) => i > 0 && arrive <= stops[i - 1]!.leave);
  if (early !== -1) return { code: 'place-too-early', place: early };
  const whole = stops.at(-1)!.leave - stops[0]!.arrive;
  return whole > LONGEST_RIDE_HOURS * HOUR_MS
    ? { code: 'ride-too-long', limitHours: LONGEST_RIDE_HOURS }
    : null;
}

/** The points of a ride between typed places: straight climbs, level stops. */
export function pointsBetween(stops: readonly RideStop[]): readonly RidePoint[] {
  return stops.flatMap(({ arrive, leave, elevation }) =>
    arrive === leave
      ? [{ at: arrive, elevation }]
      : [
          { at: arrive, elevation },
          { at: leave, elevation },
        ],
  );
}

/** Height at a time of the ride, straight between its points; the ends are held. */
export function elevationAt(points: readonly RidePoint[], at: Instant): Metre {
  let [low, high] = [0, points.length - 1];
  if (at <= points[low]!.at) return points[low]!.elevation;
  if (at >= points[high]!.at) return points[high]!.elevation;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle]!.at <= at) low = middle;
    else high = middle;
  }
  const [a, b] = [points[low]!, points[high]!];
  return metre(a.elevation + ((b.elevation - a.elevation) * (at - a.at)) / (b.at - a.at));
}

/** The ride with a stop made at least so many minutes long; everything after it comes later by what is added. */
export function withStop(ride: Ride, place: number, minutes: number): Ride {
  const { arrive, leave, elevation } = ride.stops[place]!;
  const added = Math.max(0, arrive + minutes * MINUTE_MS - leave);
  if (added === 0) return ride;
  const later = (at: Instant): Instant => instant(at + added);
  const stops = ride.stops.map((stop, i) =>
    i < place
      ? stop
      : { ...stop, arrive: i === place ? stop.arrive : later(stop.arrive), leave: later(stop.leave) },
  );
  const before = ride.points.filter(({ at }) => at <= leave);
  const after = ride.points.filter(({ at }) => at > leave);
  const wait = { at: later(leave), elevation };
  return { ...ride, stops, points: [...before, wait, ...after.map((p) => ({ ...p, at: later(p.at) }))] };
}
