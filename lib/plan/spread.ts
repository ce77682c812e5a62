import { causesAt, causesSd, type MachineNeed } from './machine-need';
import type { NeedCurve } from './need-curve';
import { normalBelow } from './normal';
import type { Track } from './readings';

/**
 * The law of L at one instant, as a parabola in a standard normal u: L = middle + sd u + bend u².
 *
 * All causes enter L almost in straight lines, but a colder night and a stronger response multiply, so the cold side
 * reaches further than the warm side. With gradient g and curvature H over the causes, and w = g/|g|,
 *
 *     sd = |g|,   bend = ½ wᵀHw,   middle = mean line + ½ (tr H − wᵀHw)
 *
 * where the last part is what curvature at right angles to w adds on average.
 */
export type NeedSpread = { readonly middle: number; readonly sd: number; readonly bend: number };

export function spreadAt(
  machine: MachineNeed,
  at: { readonly curve: NeedCurve; readonly track: Track; readonly i: number; readonly mean: number },
): NeedSpread {
  const { curve, track, i, mean } = at;
  const causes = causesAt(machine, at);
  const sd = causesSd(causes);
  const { pressureSd, temperatureSd, temperatureExponent, correlation } = machine.response;
  const perStep = track.temperatureSd[i]! / curve.temperature[i]!;
  const temperatureTwice =
    2 * curve.bend[i]! * track.temperatureSd[i]! ** 2 + (temperatureExponent - 0.5) * perStep ** 2;
  const withResponse =
    causes.temperature *
    perStep *
    temperatureSd *
    (correlation * causes.response + Math.sqrt(1 - correlation ** 2) * causes.responseOther);
  const pressureWithResponse =
    causes.pressure * causes.response * pressureSd * (track.pressureSd[i]! / track.pressure[i]!);
  const along =
    (temperatureTwice * causes.temperature ** 2 - 2 * withResponse + 2 * pressureWithResponse) / sd ** 2;
  return { middle: mean + (temperatureTwice - along) / 2, sd, bend: along / 2 };
}

/** The L that lies z standard deviations of u up. */
export function levelAt({ middle, sd, bend }: NeedSpread, z: number): number {
  return middle + sd * z + bend * z * z;
}

/** Chance that L is above a threshold. */
export function chanceOver({ middle, sd, bend }: NeedSpread, threshold: number): number {
  const short = threshold - middle;
  const square = sd * sd + 4 * bend * short;
  // A parabola that turns before it gets there stays on the side where its middle is.
  if (square < 0) return short < 0 ? 1 : 0;
  return normalBelow((-2 * short) / (sd + Math.sqrt(square)));
}
