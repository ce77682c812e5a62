import type { MachineNeed } from './machine-need';
import type { NeedCurve } from './need-curve';
import { INPUT, type Window } from './scenarios';
import type { Normals } from './stratified';

/**
 * The three logs that L is linear in, of every draw through the whole night, at [s * instants + j]: what is the same
 * for every machine with one intake.
 */
export type NightPaths = {
  readonly draws: number;
  readonly instants: number;
  readonly need: Float64Array;
  readonly lnPressure: Float64Array;
  readonly lnTemperature: Float64Array;
};

export function nightPaths(curve: NeedCurve, window: Window, normals: Normals): NightPaths {
  const { level: warmer, rest: warmerRest } = window.draws.temperature;
  const { level: higher, rest: higherRest } = window.draws.lnPressure;
  const { level, slope, bend, pressureSlope, lnPressure, lnTemperature, temperature } = curve;
  const [t, p] = [normals.input(INPUT.temperature), normals.input(INPUT.pressure)];
  const instants = level.length;
  const size = normals.draws * instants;
  const paths = {
    draws: normals.draws,
    instants,
    need: new Float64Array(size),
    lnPressure: new Float64Array(size),
    lnTemperature: new Float64Array(size),
  };
  for (let s = 0, at = 0; s < normals.draws; s++) {
    for (let j = 0; j < instants; j++, at++) {
      const dT = warmer[j]! * t[s]! + warmerRest[at]!;
      const dq = higher[j]! * p[s]! + higherRest[at]!;
      // ln(1 + δT/T) to second order; the third is below 1e-5.
      const y = dT / temperature[j]!;
      paths.need[at] = level[j]! + dT * (slope[j]! + bend[j]! * dT) + pressureSlope[j]! * dq;
      paths.lnPressure[at] = lnPressure[j]! + dq;
      paths.lnTemperature[at] = lnTemperature[j]! + y - (y * y) / 2;
    }
  }
  return paths;
}

/** L of every draw through the whole night, at the same places: the equation in machine-need.ts. */
export function drawnIdeals(machine: MachineNeed, paths: NightPaths, normals: Normals): Float64Array {
  const { response } = machine;
  const { need, lnPressure, lnTemperature, instants } = paths;
  const [first, second] = [normals.input(INPUT.response), normals.input(INPUT.responseOther)];
  const baseline = normals.input(INPUT.baseline);
  const across = Math.sqrt(1 - response.correlation ** 2);
  const ideals = new Float64Array(need.length);
  for (let s = 0, at = 0; s < paths.draws; s++) {
    const np = response.pressureExponent - 0.5 + response.pressureSd * first[s]!;
    const turned = response.correlation * first[s]! + across * second[s]!;
    const nT = response.temperatureExponent - 0.5 + response.temperatureSd * turned;
    const shift = machine.shift + machine.shiftSd * baseline[s]!;
    const still = shift - machine.need - np * machine.lnPressure + nT * machine.lnTemperature;
    for (let j = 0; j < instants; j++, at++)
      ideals[at] = still + need[at]! + np * lnPressure[at]! - nT * lnTemperature[at]!;
  }
  return ideals;
}
