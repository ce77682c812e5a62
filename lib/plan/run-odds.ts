import { type Causes, causesAt, causesSd, type MachineNeed } from './machine-need';
import type { NeedCurve } from './need-curve';
import { normalBelow } from './normal';
import type { Track } from './readings';
import { type AirDraws, INPUT } from './scenarios';
import type { Normals } from './stratified';

/** A stretch of the night with its drawn air. */
export type Window = {
  readonly track: Track;
  readonly draws: AirDraws;
  /** The instant the draws are split around. */
  readonly centre: number;
};

/**
 * The ideal log area L over a run, in every draw and at every instant, as a straight line in u:
 *
 *     L_j(s, u) = base + slope (u − u0)
 *
 * u is the one standard normal direction, among all that is uncertain (temperature, pressure, response, baseline), in
 * which L at the window's centre changes most; draw s fixes everything at right angles to it. Chances are then exact
 * integrals over u and a mean over the draws, which needs far fewer draws than counting.
 */
export type NeedLines = {
  readonly draws: number;
  readonly instants: number;
  /** At [j * draws + s]. */
  readonly base: Float64Array;
  readonly slope: Float64Array;
  /** u of each draw itself. */
  readonly u: Float64Array;
};

export type RunOdds = NeedLines & {
  /** exp(−L) of each draw itself, at the same places as `base`. */
  readonly perIdeal: Float64Array;
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
};

/** Lines are taken here, between the median and the tail that limits look at. */
const U0 = 1;
/** A slope this small beside the spread counts as none. */
const FLAT = 1e-9;

type Direction = { readonly unit: Causes; readonly sd: number };

/** The direction in which L changes most, as a unit vector over the causes. */
function steepest(causes: Causes): Direction {
  const sd = causesSd(causes);
  return {
    sd,
    unit: {
      temperature: causes.temperature / sd,
      pressure: causes.pressure / sd,
      response: causes.response / sd,
      responseOther: causes.responseOther / sd,
      baseline: causes.baseline / sd,
    },
  };
}

/** The causes of every draw, moved along the direction to u = U0. */
type Moved = { readonly u: Float64Array } & { readonly [cause in keyof Causes]: Float64Array };

function moveDraws(normals: Normals, { unit }: Direction): Moved {
  const t = normals.input(INPUT.temperature);
  const p = normals.input(INPUT.pressure);
  const r = normals.input(INPUT.response);
  const o = normals.input(INPUT.responseOther);
  const b = normals.input(INPUT.baseline);
  const u = t.map(
    (_, s) =>
      unit.temperature * t[s]! +
      unit.pressure * p[s]! +
      unit.response * r[s]! +
      unit.responseOther * o[s]! +
      unit.baseline * b[s]!,
  );
  const moved = (x: Float64Array, along: number) => x.map((value, s) => value + (U0 - u[s]!) * along);
  return {
    u,
    temperature: moved(t, unit.temperature),
    pressure: moved(p, unit.pressure),
    response: moved(r, unit.response),
    responseOther: moved(o, unit.responseOther),
    baseline: moved(b, unit.baseline),
  };
}

type Place = {
  readonly machine: MachineNeed;
  readonly curve: NeedCurve;
  readonly window: Window;
  readonly direction: Direction;
  readonly moved: Moved;
};

/** Fills base and slope at one instant of all draws. */
function fillInstant({ machine, curve, window, direction, moved }: Place, j: number, out: NeedLines): void {
  const { unit } = direction;
  const { response } = machine;
  const { temperature: warmer, lnPressure: higher, draws } = window.draws;
  const across = Math.sqrt(1 - response.correlation ** 2);
  const pressureAlong = response.pressureSd * unit.response;
  const temperatureAlong =
    response.temperatureSd * (response.correlation * unit.response + across * unit.responseOther);
  const temperatureStep = warmer.level[j]! * unit.temperature;
  const pressureStep = higher.level[j]! * unit.pressure;
  const baselineStep = machine.shiftSd * unit.baseline;
  const kelvins = curve.temperature[j]!;
  const level = curve.level[j]! - machine.need + machine.shift;
  const lnPressure = curve.lnPressure[j]! - machine.lnPressure;
  const cold = machine.lnTemperature - curve.lnTemperature[j]!;
  const [n1, n2, q1] = [curve.slope[j]!, curve.bend[j]!, curve.pressureSlope[j]!];
  for (let s = 0; s < draws; s++) {
    const i = j * draws + s;
    const dT = warmer.level[j]! * moved.temperature[s]! + warmer.rest[i]!;
    const dq = higher.level[j]! * moved.pressure[s]! + higher.rest[i]!;
    const np = response.pressureExponent - 0.5 + response.pressureSd * moved.response[s]!;
    const other = response.correlation * moved.response[s]! + across * moved.responseOther[s]!;
    const nT = response.temperatureExponent - 0.5 + response.temperatureSd * other;
    // ln(T0/T) to second order in δT/T; the third is below 1e-5.
    const y = dT / kelvins;
    const colder = cold - y + (y * y) / 2;
    out.base[i] =
      level +
      dT * (n1 + n2 * dT) +
      q1 * dq +
      np * (lnPressure + dq) +
      nT * colder +
      machine.shiftSd * moved.baseline[s]!;
    out.slope[i] =
      (n1 + 2 * n2 * dT - (nT * (1 - y)) / kelvins) * temperatureStep +
      (q1 + np) * pressureStep +
      pressureAlong * (lnPressure + dq) +
      temperatureAlong * colder +
      baselineStep;
  }
}

type NeedRequest = {
  readonly machine: MachineNeed;
  readonly curve: NeedCurve;
  readonly window: Window;
  readonly normals: Normals;
};

export function needLines({ machine, curve, window, normals }: NeedRequest): NeedLines {
  const { track, centre } = window;
  const direction = steepest(causesAt(machine, { curve, track, i: centre }));
  const moved = moveDraws(normals, direction);
  const instants = track.at.length;
  const lines = {
    draws: normals.draws,
    instants,
    base: new Float64Array(instants * normals.draws),
    slope: new Float64Array(instants * normals.draws),
    u: moved.u,
  };
  const place = { machine, curve, window, direction, moved };
  for (let j = 0; j < instants; j++) fillInstant(place, j, lines);
  return lines;
}

/** L of every draw itself, at [j * draws + s]. */
export function drawnIdeals({ draws, base, slope, u }: NeedLines): Float64Array {
  return base.map((level, i) => level + slope[i]! * (u[i % draws]! - U0));
}

export function runOdds(request: NeedRequest): RunOdds {
  const lines = needLines(request);
  const ideals = drawnIdeals(lines);
  const lowest = new Float64Array(lines.draws).fill(Number.POSITIVE_INFINITY);
  const highest = new Float64Array(lines.draws).fill(Number.NEGATIVE_INFINITY);
  for (let i = 0; i < ideals.length; i++) {
    const s = i % lines.draws;
    lowest[s] = Math.min(lowest[s]!, ideals[i]!);
    highest[s] = Math.max(highest[s]!, ideals[i]!);
  }
  return { ...lines, perIdeal: ideals.map((ideal) => Math.exp(-ideal)), lowest, highest };
}

/** Chance that L rises above a threshold somewhere in the run. */
export function chanceAbove(odds: RunOdds, threshold: number): number {
  return chanceBeyond(odds, threshold, 1);
}

/** Chance that L falls below a threshold somewhere in the run. */
export function chanceBelow(odds: RunOdds, threshold: number): number {
  return chanceBeyond(odds, threshold, -1);
}

/**
 * Mean over the draws of the chance that, at some instant, side (L − threshold) > 0. In u that is everything above the
 * lowest rising crossing and everything below the highest falling one.
 */
function chanceBeyond(odds: RunOdds, threshold: number, side: 1 | -1): number {
  const { draws, instants, base, slope } = odds;
  let sum = 0;
  for (let s = 0; s < draws; s++) {
    let [above, below] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = s; i < draws * instants; i += draws) {
      const rise = side * slope[i]!;
      const short = side * (threshold - base[i]!);
      if (rise > FLAT) above = Math.min(above, U0 + short / rise);
      else if (rise < -FLAT) below = Math.max(below, U0 + short / rise);
      else if (short < 0) above = Number.NEGATIVE_INFINITY;
    }
    sum += below >= above ? 1 : normalBelow(-above) + normalBelow(below);
  }
  return sum / draws;
}

/** Draws in which L rises above a threshold somewhere in the run. */
export function countAbove(odds: RunOdds, threshold: number): number {
  let count = 0;
  for (const highest of odds.highest) if (highest > threshold) count += 1;
  return count;
}

/** How far L stands above a threshold, mean over the draws of the run's highest. */
export function meanExcess(odds: RunOdds, threshold: number): number {
  let sum = 0;
  for (const highest of odds.highest) sum += Math.max(0, highest - threshold);
  return sum / odds.draws;
}

/** The threshold that L rises above with a given chance, to 1e-9. */
export function levelAbove(odds: RunOdds, chance: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let s = 0; s < odds.draws; s++) {
    low = Math.min(low, odds.lowest[s]!);
    high = Math.max(high, odds.highest[s]!);
  }
  const margin = 1 + high - low;
  [low, high] = [low - margin, high + margin];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (chanceAbove(odds, middle) > chance) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Mean power lost by one carburettor over the run: k drift² on the rich side, nothing on the lean side, which counts
 * as risk.
 */
export function meanLoss(odds: RunOdds, delivered: number, richPowerLoss: number): number {
  const fuel = Math.exp(delivered);
  let sum = 0;
  for (const perIdeal of odds.perIdeal) {
    const drift = fuel * perIdeal - 1;
    if (drift > 0) sum += Math.min(1, richPowerLoss * drift * drift);
  }
  return sum / odds.perIdeal.length;
}
