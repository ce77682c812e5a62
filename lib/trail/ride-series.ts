import { knownCurve } from '@/lib/hours/at';
import { type Lapse, moveHour } from '@/lib/hours/elevation-shift';
import type { Hour, HourSeries } from '@/lib/hours/series';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { elevationAt, type Ride } from './ride';

export type RideAirProblem = {
  readonly code: 'hours-do-not-cover-ride';
  readonly start: Instant;
  readonly end: Instant;
  /** null where there are no hours at all. */
  readonly hoursStart: Instant | null;
  readonly hoursEnd: Instant | null;
};

/** Between the points of the ride the air is looked at this often. */
const STEP_MS = 10 * MINUTE_MS;
/** A track may have points every second; closer than this the air does not change. */
const CLOSEST_MS = MINUTE_MS / 2;

/** The moments of the ride that are looked at: every place, every point, and steps between. */
function momentsOf({ points, stops }: Ride): readonly Instant[] {
  const [first, last] = [points[0]!.at, points.at(-1)!.at];
  const steps = Array.from(
    { length: Math.floor((last - first) / STEP_MS) },
    (_, i) => first + (i + 1) * STEP_MS,
  );
  const must = new Set<number>(stops.flatMap(({ arrive, leave }) => [arrive, leave]));
  const all = [...new Set([...must, ...points.map(({ at }) => at), ...steps])].sort((a, b) => a - b);
  let kept = Number.NEGATIVE_INFINITY;
  return all
    .filter((at) => {
      if (!must.has(at) && at - kept < CLOSEST_MS) return false;
      kept = at;
      return true;
    })
    .map(instant);
}

/**
 * The air along the ride as a series of its own: each moment's hour of the valley (or wherever the hours are for),
 * moved to the height the rider is at.
 */
export function rideSeries(ride: Ride, hours: HourSeries, fall: Lapse): Result<HourSeries, RideAirProblem> {
  const known = knownCurve(hours.hours);
  const moved: Hour[] = [];
  for (const at of momentsOf(ride)) {
    const hour = known(at);
    if (hour === null) return fail(uncovered(ride, hours));
    moved.push(moveHour(hour, { from: hours.elevation, to: elevationAt(ride.points, at) }, fall));
  }
  return ok({ ...hours, hours: moved, elevation: ride.points[0]!.elevation });
}

function uncovered({ points }: Ride, { hours }: HourSeries): RideAirProblem {
  return {
    code: 'hours-do-not-cover-ride',
    start: points[0]!.at,
    end: points.at(-1)!.at,
    hoursStart: hours[0]?.at ?? null,
    hoursEnd: hours.at(-1)?.at ?? null,
  };
}
