import { addPassed, type Boundaries } from './first-passage';
import { type MachineNeed, responseCauses, slopesAt } from './machine-need';
import type { NeedCurve } from './need-curve';
import { normalDensity } from './normal';
import type { Track } from './readings';

/** One machine's need through a night. */
export type NightNeed = {
  readonly machine: MachineNeed;
  readonly curve: NeedCurve;
  readonly track: Track;
  /** L at the mean of everything. */
  readonly mean: Float64Array;
};

/** A part of the night over which the mean ideal goes one way. */
export type Stretch = { readonly from: number; readonly to: number; readonly rising: boolean };

/**
 * Response (two inputs), baseline, the pressure error's level at the middle instant, and the part of the temperature
 * error that stays all night.
 */
type Lasting = readonly [number, number, number, number, number];

/** What is uncertain all through a stretch, split by the direction in which it moves L where the threshold is near. */
type Split = {
  /** Instants in the order of the walk. */
  readonly order: readonly number[];
  /** The part of the pressure error that goes with its level, by instant [Pa per standard deviation]. */
  readonly pressureLevel: Float64Array;
  /** A unit vector. */
  readonly direction: Lasting;
  /** What is at right angles to it, by place in the walk. */
  readonly aside: readonly Lasting[];
  /** Step of u that an integral over it needs. */
  readonly step: number;
};

/** u is taken from −FAR to FAR. */
const FAR = 3.3;
/** Steps of u in one standard deviation of the rest of L: the trapezoidal rule is then good to 1e-4. */
const STEP = 1.3;
const SMALLEST_STEP = 0.125;

function lastingAt({ machine, curve, track }: NightNeed, pressureLevel: Float64Array, j: number): Lasting {
  const { response, responseOther } = responseCauses(machine, curve, j);
  const slopes = slopesAt(machine, curve, j);
  const perPascal = slopes.lnPressure / track.pressure[j]!;
  const stays = slopes.temperature * track.temperatureLasting[j]!;
  return [response, responseOther, machine.shiftSd, perPascal * pressureLevel[j]!, stays];
}

function dot(a: Lasting, b: Lasting): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3] + a[4] * b[4];
}

/** The pressure error's covariance with its level at an instant, by instant, in standard deviations of that level. */
function levelFrom({ pressureSd, pressureToNext }: Track, middle: number): Float64Array {
  const level = new Float64Array(pressureSd.length);
  level[middle] = pressureSd[middle]!;
  for (let j = middle + 1; j < level.length; j++)
    level[j] = (level[j - 1]! * pressureToNext[j - 1]!) / pressureSd[j - 1]! ** 2;
  for (let j = middle - 1; j >= 0; j--)
    level[j] = (level[j + 1]! * pressureToNext[j]!) / pressureSd[j + 1]! ** 2;
  return level;
}

/** What is left of the temperature error's variance when the part that stays is known. */
function wanderingVariance({ temperatureSd, temperatureLasting }: Track, j: number): number {
  return Math.max(0, temperatureSd[j]! ** 2 - temperatureLasting[j]! ** 2);
}

function splitOf(night: NightNeed, { from, to, rising }: Stretch, threshold: number): Split {
  const { machine, curve, track, mean } = night;
  const order = Array.from({ length: to - from + 1 }, (_, k) => (rising ? from + k : to - k));
  const away = (j: number) => Math.abs(mean[j]! - threshold);
  const middle = order.reduce((best, j) => (away(j) < away(best) ? j : best), from);
  const pressureLevel = levelFrom(track, middle);
  const there = lastingAt(night, pressureLevel, middle);
  const sd = Math.sqrt(dot(there, there));
  const direction = (sd > 0 ? there.map((each) => each / sd) : [0, 0, 0, 0, 0]) as unknown as Lasting;
  const wandering =
    Math.abs(slopesAt(machine, curve, middle).temperature) * Math.sqrt(wanderingVariance(track, middle));
  return {
    order,
    pressureLevel,
    direction,
    aside: order.map((j) => {
      const each = lastingAt(night, pressureLevel, j);
      const along = dot(each, direction);
      return each.map((value, c) => value - along * direction[c]!) as unknown as Lasting;
    }),
    step: Math.max(SMALLEST_STEP, wandering === 0 ? 0 : (STEP * wandering) / Math.hypot(wandering, sd)),
  };
}

/** n_p − ½, n_T − ½, the baseline's shift, the pressure's level and the lasting temperature error where u stands. */
function standingAt({ response, shift, shiftSd }: MachineNeed, { direction }: Split, u: number) {
  const [first, second] = [u * direction[0], u * direction[1]];
  const turned = response.correlation * first + Math.sqrt(1 - response.correlation ** 2) * second;
  return {
    np: response.pressureExponent - 0.5 + response.pressureSd * first,
    nT: response.temperatureExponent - 0.5 + response.temperatureSd * turned,
    shift: shift + shiftSd * u * direction[2],
    pressure: u * direction[3],
    temperature: u * direction[4],
  };
}

/**
 * L at u less its mean, over its standard deviation, as a Markov sequence; and the threshold on the same scale, the
 * bend of L in the temperature error included. What the temperature error, the rest of the pressure error and what is
 * aside add up to is not quite Markov: correlations of neighbours are exact, further ones are their products.
 */
function boundariesAt(
  night: NightNeed,
  split: Split,
  given: { readonly u: number; readonly threshold: number },
) {
  const { machine, curve, track } = night;
  const { order, aside, pressureLevel } = split;
  const { np, nT, shift, pressure, temperature } = standingAt(machine, split, given.u);
  const boundary = new Float64Array(order.length);
  const kept = new Float64Array(order.length - 1);
  let [slopeBefore, perPascalBefore, sdBefore] = [0, 0, 0];
  for (const [k, j] of order.entries()) {
    const t = curve.temperature[j]!;
    const dq = (pressureLevel[j]! * pressure) / track.pressure[j]!;
    const bend = curve.bend[j]! + nT / (2 * t * t);
    const warmer = temperature * track.temperatureLasting[j]!;
    const level = curve.slope[j]! - nT / t;
    const slope = level + 2 * bend * warmer;
    const perPascal = (curve.pressureSlope[j]! + np) / track.pressure[j]!;
    const still =
      curve.level[j]! -
      machine.need +
      curve.pressureSlope[j]! * dq +
      np * (curve.lnPressure[j]! + dq - machine.lnPressure) +
      nT * (machine.lnTemperature - curve.lnTemperature[j]!) +
      level * warmer +
      bend * warmer ** 2 +
      shift;
    const warm = wanderingVariance(track, j);
    const variance =
      slope ** 2 * warm +
      perPascal ** 2 * Math.max(0, track.pressureSd[j]! ** 2 - pressureLevel[j]! ** 2) +
      dot(aside[k]!, aside[k]!);
    const sd = Math.max(Math.sqrt(variance), LEAST_SD);
    // The temperature error to be expected where L stands one unit up, and what it bends L by.
    const curl = bend * ((slope * warm) / sd ** 2) ** 2;
    boundary[k] = whereReached(given.threshold - still - bend * warm + curl * sd ** 2, curl) / sd;
    if (k > 0) {
      const earlier = Math.min(j, order[k - 1]!);
      const shared =
        slope *
          slopeBefore *
          (track.temperatureToNext[earlier]! -
            track.temperatureLasting[earlier]! * track.temperatureLasting[earlier + 1]!) +
        perPascal *
          perPascalBefore *
          (track.pressureToNext[earlier]! - pressureLevel[j]! * pressureLevel[order[k - 1]!]!) +
        dot(aside[k]!, aside[k - 1]!);
      kept[k - 1] = shared / (sd * sdBefore);
    }
    [slopeBefore, perPascalBefore, sdBefore] = [slope, perPascal, sd];
  }
  return { boundary, kept } satisfies Boundaries;
}

const LEAST_SD = 1e-9;

/** The x at which x + curl x² reaches a height; of the two the one on the near side of the turn. */
function whereReached(height: number, curl: number): number {
  const square = 1 + 4 * curl * height;
  if (square < 0) return height < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  return (2 * height) / (1 + Math.sqrt(square));
}

/**
 * Chance that L has been above a threshold by each instant of a walk through a stretch: forwards where L rises, and
 * backwards where it falls (there: that it is above at this instant or later).
 *
 * What lasts (response, baseline, the pressure error's level, the temperature error's part that stays) is integrated along the one direction u in which it moves
 * L, by the trapezoidal rule; at each u, L is a Markov sequence with a boundary, whose first passage is exact. No draws
 * are taken.
 */
export function chancesPassed(night: NightNeed, stretch: Stretch, threshold: number): Float64Array {
  const split = splitOf(night, stretch, threshold);
  const passed = new Float64Array(split.order.length);
  const half = Math.ceil(FAR / split.step);
  const places = Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * split.step);
  const total = places.reduce((sum, u) => sum + normalDensity(u), 0);
  for (const u of places)
    addPassed(boundariesAt(night, split, { u, threshold }), normalDensity(u) / total, passed);
  return passed;
}
