import type { Track } from './readings';
import type { Normals } from './stratified';

/**
 * Which stratified input does what. The first six are what a run's chance hangs on, so they share the even joint
 * spread; the rest is how the error wanders from instant to instant.
 */
export const INPUT = {
  temperature: 0,
  pressure: 1,
  response: 2,
  responseOther: 3,
  baseline: 4,
  /** How the part of an error that stays all night and the part that wanders share what `temperature` says. */
  lasting: 5,
  wander: 6,
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

type Errors = {
  readonly sd: Float64Array;
  readonly toNext: Float64Array;
  readonly lasting: Float64Array;
};

type Walk = { readonly centre: number; readonly normals: Normals; readonly of: 'temperature' | 'pressure' };

/**
 * Walks the wandering part of an error away from the centre in both directions. It is Markov once the part that stays is
 * taken out; between neighbours i and j, with the covariance of the two known,
 *
 *     w_j = α w_i + β ξ,   α = cov(i, j)/var(i),   β² = var(j) − α cov(i, j)
 *
 * @returns what one standard deviation at the centre moves each instant by, and the rest draw by draw
 */
function wander({ sd, toNext, lasting }: Errors, { centre, normals, of }: Walk): SplitErrors {
  const { draws } = normals;
  const count = sd.length;
  const variance = new Float64Array(count);
  for (let j = 0; j < count; j++) variance[j] = sd[j]! ** 2 - lasting[j]! ** 2;
  const level = new Float64Array(count);
  const rest = new Float64Array(count * draws);
  level[centre] = Math.sqrt(variance[centre]!);
  const step = (from: number, to: number) => {
    const covariance = toNext[Math.min(from, to)]! - lasting[from]! * lasting[to]!;
    const alpha = covariance / variance[from]!;
    const beta = Math.sqrt(Math.max(0, variance[to]! - alpha * covariance));
    const xi = normals.input(wanderInput(Math.abs(to - centre) * 2 - (to > centre ? 2 : 1), of));
    level[to] = alpha * level[from]!;
    for (let s = 0; s < draws; s++) rest[s * count + to] = alpha * rest[s * count + from]! + beta * xi[s]!;
  };
  for (let j = centre + 1; j < count; j++) step(j - 1, j);
  for (let j = centre - 1; j >= 0; j--) step(j + 1, j);
  return { level, rest };
}

/**
 * The part that stays, l_j a, and the wandering part, q_j ξ + rest_j, turned so that one direction is the level at the
 * centre: x = (l_c a + q_c ξ)/sd_c, and y = (q_c a − l_c ξ)/sd_c at right angles to it,
 *
 *     e_j = (l_c l_j + q_c q_j)/sd_c x + (q_c l_j − l_c q_j)/sd_c y + rest_j
 */
function splitErrors(errors: Errors, walk: Walk): SplitErrors {
  const { lasting, sd } = errors;
  const { centre, normals } = walk;
  const { level: wandering, rest } = wander(errors, walk);
  const staysShare = lasting[centre]! / sd[centre]!;
  const wandersShare = wandering[centre]! / sd[centre]!;
  const y = normals.input(INPUT.lasting);
  const count = lasting.length;
  const level = new Float64Array(count);
  const across = new Float64Array(count);
  for (let j = 0; j < count; j++) {
    level[j] = staysShare * lasting[j]! + wandersShare * wandering[j]!;
    across[j] = wandersShare * lasting[j]! - staysShare * wandering[j]!;
  }
  for (let s = 0, at = 0; s < normals.draws; s++)
    for (let j = 0; j < count; j++, at++) rest[at] = rest[at]! + across[j]! * y[s]!;
  return { level, rest };
}

/** Where the drawn air stands: temperature errors [K] and errors of ln p, split around one instant. */
export type AirDraws = {
  readonly temperature: SplitErrors;
  readonly lnPressure: SplitErrors;
};

/** Makes errors of pressure, instant after instant, draw after draw, errors of its logarithm where they stand. */
function overPressure(errors: Float64Array, { pressure }: Track): Float64Array {
  for (let i = 0; i < errors.length; i += pressure.length)
    for (let j = 0; j < pressure.length; j++) errors[i + j]! /= pressure[j]!;
  return errors;
}

export function airDraws(track: Track, normals: Normals, centre: number): AirDraws {
  const pressure = splitErrors(
    { sd: track.pressureSd, toNext: track.pressureToNext, lasting: track.pressureLasting },
    { centre, normals, of: 'pressure' },
  );
  return {
    temperature: splitErrors(
      { sd: track.temperatureSd, toNext: track.temperatureToNext, lasting: track.temperatureLasting },
      { centre, normals, of: 'temperature' },
    ),
    lnPressure: { level: overPressure(pressure.level, track), rest: overPressure(pressure.rest, track) },
  };
}

/** A stretch of the night with its drawn air. */
export type DrawnWindow = {
  readonly track: Track;
  readonly draws: AirDraws;
  /** The instant the draws are split around. */
  readonly centre: number;
};

/** The instant a window is drawn around: its coldest, where a run turns lean if it does. */
export function coldest(track: Track): number {
  const { temperature } = track;
  let best = 0;
  for (let i = 1; i < temperature.length; i++) if (temperature[i]! < temperature[best]!) best = i;
  return best;
}
