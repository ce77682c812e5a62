import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import { type Metre, metre, type SpeedMs } from '@/lib/units/quantity';
import { type Ride, type RidePoint, type RideProblem, type RideStop, rideProblem } from './ride';
import { atSpeed, type Profile, type ProfilePoint, SHORTEST_STOP_MS, simplified, startedAt } from './track';

/** What a rider adds to a track: when, how fast where it has no times, how high where it has no heights. */
export type TrackChoice = {
  /** null: as recorded. */
  readonly start: Instant | null;
  readonly speed: SpeedMs | null;
  /** Height of the start, half way along, and the end; null where the track has its own. */
  readonly heights: { readonly start: Metre; readonly middle: Metre; readonly end: Metre } | null;
};

export type TrackProblem =
  | { readonly code: 'track-without-times' }
  | { readonly code: 'track-without-heights' }
  | { readonly code: 'track-without-way' };

/** Points that a ride keeps of a track. */
export const MOST_POINTS = 400;
/** The ride is cut into legs where it turns by at least this much; more where that makes too many legs. */
const LEAST_TURN = 30;
const MOST_LEGS = 20;
/** A leg is longer than this, or it is part of its neighbour: nobody plans three minutes of way. Judgement. */
const SHORTEST_LEG_MS = 4 * MINUTE_MS;

type Timed = RidePoint & { readonly along: Metre };

/** A ride from a track: legs from each high or low point to the next, and stops where it stood still. */
export function rideOfTrack(profile: Profile, choice: TrackChoice): Result<Ride, TrackProblem | RideProblem> {
  const high = heightened(profile, choice);
  if (high === null) return fail({ code: 'track-without-heights' });
  const length = high.at(-1)!.along;
  if (!(length > 0)) return fail({ code: 'track-without-way' });
  const timed = timedPoints(simplified(high, MOST_POINTS), profile, choice);
  if (timed === null) return fail({ code: 'track-without-times' });
  const stops = stopsOf(timed);
  const problem = rideProblem(stops);
  return problem === null
    ? ok({ stops, points: timed.map(({ at, elevation }) => ({ at, elevation })), distance: length })
    : fail(problem);
}

function heightened(
  { points, elevations }: Profile,
  { heights }: TrackChoice,
): readonly ProfilePoint[] | null {
  if (elevations !== 'none') return points;
  if (heights === null) return null;
  const length = points.at(-1)!.along;
  return points.map((point) => {
    const half = length === 0 ? 0 : (2 * point.along) / length;
    const [from, to, share] =
      half <= 1 ? [heights.start, heights.middle, half] : [heights.middle, heights.end, half - 1];
    return { ...point, elevation: metre(from + (to - from) * share) };
  });
}

/** Strictly rising in time, or null where neither the track nor the rider says when. */
function timedPoints(
  points: readonly ProfilePoint[],
  profile: Profile,
  { start, speed }: TrackChoice,
): readonly Timed[] | null {
  if (!profile.timed && (start === null || speed === null)) return null;
  const timed =
    profile.timed && start === null
      ? points
      : profile.timed && start !== null
        ? startedAt(points, start)
        : start !== null && speed !== null
          ? atSpeed(points, start, speed)
          : points;
  const rising: Timed[] = [];
  for (const { at, elevation, along } of timed) {
    if (at === null || elevation === null) continue;
    const last = rising.at(-1);
    if (last === undefined || at > last.at) rising.push({ at, elevation, along });
    // Two heights at one time: the lower one has the thicker air.
    else if (elevation < last.elevation) rising[rising.length - 1] = { ...last, elevation };
  }
  return rising;
}

/** Indexes of the turning points: each leg between two of them climbs or falls by at least `turn`, but for the ends. */
function turningPoints(points: readonly Timed[], turn: number): readonly number[] {
  const turns = [0];
  let [low, high] = [0, 0];
  let way: 'up' | 'down' | null = null;
  for (const [i, { elevation }] of points.entries()) {
    if (elevation > points[high]!.elevation) high = i;
    if (elevation < points[low]!.elevation) low = i;
    if (way !== 'down' && points[high]!.elevation - elevation >= turn) {
      if (high > turns.at(-1)!) turns.push(high);
      [way, low] = ['down', i];
      high = i;
    } else if (way !== 'up' && elevation - points[low]!.elevation >= turn) {
      if (low > turns.at(-1)!) turns.push(low);
      [way, high] = ['up', i];
      low = i;
    }
  }
  const rest = way === 'down' ? low : high;
  if (rest > turns.at(-1)! && rest < points.length - 1) turns.push(rest);
  return [...turns, points.length - 1];
}

/** Turning points without those that would cut off a short leg; the lowest and the highest of all always stay. */
function withoutShortLegs(points: readonly Timed[], turns: readonly number[]): readonly number[] {
  const heights = turns.map((i) => points[i]!.elevation);
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const last = turns.at(-1)!;
  const kept: number[] = [];
  for (const i of turns) {
    const { at, elevation } = points[i]!;
    const before = kept.at(-1);
    const extreme = elevation === lowest || elevation === highest;
    const short =
      (before !== undefined && at - points[before]!.at < SHORTEST_LEG_MS) ||
      points[last]!.at - at < SHORTEST_LEG_MS;
    if (before === undefined || i === last || extreme || !short) kept.push(i);
  }
  return kept;
}

/** Whether the way from the point before to this one was spent standing. */
function stoodStill(points: readonly Timed[], i: number): boolean {
  const [a, b] = [points[i - 1], points[i]];
  if (a === undefined || b === undefined) return false;
  // Slower than a walk, and long enough to have a tool in hand.
  return b.at - a.at >= SHORTEST_STOP_MS && (b.along - a.along) / ((b.at - a.at) / 1000) < 0.5;
}

function stopsOf(points: readonly Timed[]): readonly RideStop[] {
  const pauses = points.flatMap((_, i) => (stoodStill(points, i) ? [i] : []));
  let turn = LEAST_TURN;
  let turns = turningPoints(points, turn);
  while (turns.length + pauses.length > MOST_LEGS + 1 && turns.length > 2) {
    turn *= 2;
    turns = turningPoints(points, turn);
  }
  const paused = new Set(pauses);
  const ends = new Set([...withoutShortLegs(points, turns), ...pauses.map((i) => i - 1)]);
  return [...ends]
    .sort((a, b) => a - b)
    .filter((i) => !(paused.has(i) && ends.has(i - 1) && i !== points.length - 1))
    .map((i) => {
      const { at, elevation } = points[i]!;
      const leave = paused.has(i + 1) ? points[i + 1]!.at : at;
      return { name: '', elevation, arrive: at, leave };
    });
}
