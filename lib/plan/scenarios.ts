import type { Track } from './readings';
import type { Normals } from './stratified';

/**
 * Which stratified input does what. The first five are what a run's chance hangs on, so they share the even joint
 * spread; the rest is how the error wanders from instant to instant.
 */
export const INPUT = {
  temperature: 0,
  pressure: 1,
  response: 2,
  responseOther: 3,
  baseline: 4,
  wander: 5,
} as const;

/** The input that drives one step of one error. */
function wanderInput(step: number, of: 'temperature' | 'pressure'): number {
  return INPUT.wander + 2 * step + (of === 'temperature' ? 0 : 1);
}

/**
 * Errors at the instants of a track, split in two: the part that goes with the error's level at the centre instant,
 * and the rest, draw by draw.
 *
 *     e_j = level_j x + rest_j(s)
 *
 * x is the standard normal level. At the centre the rest is nothing.
 */
export type SplitErrors = {
  readonly level: Float64Array;
  /** Of instant j in draw s at [s * instants + j]. */
  readonly rest: Float64Array;
};

type Errors = { readonly sd: Float64Array; readonly toNext: Float64Array };

/**
 * Walks a Markov error away from the centre in both directions. Between neighbours a and b, with the covariance of
 * the two known,
 *
 *     e_b = α e_a + β ξ,   α = cov(a, b)/var(a),   β² = var(b) − α cov(a, b)
 */
function splitErrors(
  errors: Errors,
  walk: { readonly centre: number; readonly normals: Normals; readonly of: 'temperature' | 'pressure' },
): SplitErrors {
  const { centre, normals, of } = walk;
  const { draws } = normals;
  const count = errors.sd.length;
  const level = new Float64Array(count);
  const rest = new Float64Array(count * draws);
  level[centre] = errors.sd[centre]!;
  const step = (from: number, to: number, covariance: number) => {
    const alpha = covariance / errors.sd[from]! ** 2;
    const beta = Math.sqrt(Math.max(0, errors.sd[to]! ** 2 - alpha * covariance));
    const xi = normals.input(wanderInput(Math.abs(to - centre) * 2 - (to > centre ? 2 : 1), of));
    level[to] = alpha * level[from]!;
    for (let s = 0; s < draws; s++) rest[s * count + to] = alpha * rest[s * count + from]! + beta * xi[s]!;
  };
  for (let j = centre + 1; j < count; j++) step(j - 1, j, errors.toNext[j - 1]!);
  for (let j = centre - 1; j >= 0; j--) step(j + 1, j, errors.toNext[j]!);
  return { level, rest };
}

/** Where the drawn air stands: temperature errors [K] and errors of ln p, split around one instant. */
export type AirDraws = {
  readonly temperature: SplitErrors;
  readonly lnPressure: SplitErrors;
};

/** Errors of pressure as errors of its logarithm, instant after instant, draw after draw. */
function overPressure(errors: Float64Array, { pressure }: Track): Float64Array {
  const logs = new Float64Array(errors.length);
  for (let i = 0; i < errors.length; i += pressure.length)
    for (let j = 0; j < pressure.length; j++) logs[i + j] = errors[i + j]! / pressure[j]!;
  return logs;
}

export function airDraws(track: Track, normals: Normals, centre: number): AirDraws {
  const pressure = splitErrors(
    { sd: track.pressureSd, toNext: track.pressureToNext },
    { centre, normals, of: 'pressure' },
  );
  return {
    temperature: splitErrors(
      { sd: track.temperatureSd, toNext: track.temperatureToNext },
      { centre, normals, of: 'temperature' },
    ),
    lnPressure: { level: overPressure(pressure.level, track), rest: overPressure(pressure.rest, track) },
  };
}

/** A stretch of the night with its drawn air. */
export type Window = {
  readonly track: Track;
  readonly draws: AirDraws;
  /** The instant the draws are split around. */
  readonly centre: number;
};

/** The instant a window is drawn around: its coldest, where a run turns lean if it does. */
export function coldest(track: Track): number {
  return track.temperature.reduce((best, t, i) => (t < track.temperature[best]! ? i : best), 0);
}
