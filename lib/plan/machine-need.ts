import type { Air } from '@/lib/air/air';
import { intakeAir } from '@/lib/carb/intake';
import type { Machine, Response } from '@/lib/carb/machine';
import { kelvin } from '@/lib/units/quantity';
import type { NeedCurve } from './need-curve';
import type { Track } from './readings';

/**
 * A machine's own constants of
 *
 *     L = ln(A/A0) = need − need0 + (n_p − ½) ln(p/p0) + (n_T − ½) ln(T0/T) + shift
 *
 * the equation of `logIdealArea`, with the baseline's part taken out once.
 */
export type MachineNeed = {
  readonly need: number;
  readonly lnPressure: number;
  readonly lnTemperature: number;
  readonly shift: number;
  readonly shiftSd: number;
  readonly response: Response;
  readonly intake: Air;
};

export function machineNeed(machine: Machine): MachineNeed {
  const intake = intakeAir(machine.baselineAir, machine.baselineIntakeOffset);
  return {
    need: Math.log(intake.dryDensity) - Math.log(intake.density) / 2,
    lnPressure: Math.log(intake.pressure),
    lnTemperature: Math.log(kelvin(intake.temperature)),
    shift: machine.baselineShift?.log ?? 0,
    shiftSd: machine.baselineShift?.sd ?? 0,
    response: machine.response,
    intake,
  };
}

/** L at the mean of the air and of the response, instant by instant. */
export function meanLogIdeal(machine: MachineNeed, curve: NeedCurve): Float64Array {
  const { pressureExponent, temperatureExponent } = machine.response;
  const { level, lnPressure, lnTemperature } = curve;
  const ideals = new Float64Array(level.length);
  for (let i = 0; i < level.length; i++)
    ideals[i] =
      level[i]! -
      machine.need +
      (pressureExponent - 0.5) * (lnPressure[i]! - machine.lnPressure) +
      (temperatureExponent - 0.5) * (machine.lnTemperature - lnTemperature[i]!) +
      machine.shift;
  return ideals;
}

/** The lowest and the highest of it over the curve. */
export function meanLogIdealRange(machine: MachineNeed, curve: NeedCurve) {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const ideal of meanLogIdeal(machine, curve)) {
    lowest = Math.min(lowest, ideal);
    highest = Math.max(highest, ideal);
  }
  return { lowest, highest };
}

/** dL/dT [1/K] and dL/d(ln p) at the mean of instant i. */
export function slopesAt(machine: MachineNeed, curve: NeedCurve, i: number) {
  const { pressureExponent, temperatureExponent } = machine.response;
  return {
    temperature: curve.slope[i]! - (temperatureExponent - 0.5) / curve.temperature[i]!,
    lnPressure: curve.pressureSlope[i]! + pressureExponent - 0.5,
  };
}

/**
 * What one standard deviation of each cause moves L by at instant i: the temperature left uncertain, the pressure, the
 * response (two independent inputs that make its correlated exponents) and the baseline.
 */
export type Causes = {
  readonly temperature: number;
  readonly pressure: number;
  readonly response: number;
  readonly responseOther: number;
  readonly baseline: number;
};

export function responseCauses(machine: MachineNeed, curve: NeedCurve, i: number) {
  const { pressureSd, temperatureSd, correlation } = machine.response;
  const fromPressure = pressureSd * (curve.lnPressure[i]! - machine.lnPressure);
  const fromCold = temperatureSd * (machine.lnTemperature - curve.lnTemperature[i]!);
  return {
    response: fromPressure + correlation * fromCold,
    responseOther: Math.sqrt(1 - correlation ** 2) * fromCold,
  };
}

export function causesAt(
  machine: MachineNeed,
  at: { readonly curve: NeedCurve; readonly track: Track; readonly i: number },
): Causes {
  const { curve, track, i } = at;
  const slopes = slopesAt(machine, curve, i);
  // Written out: spreading it here takes longer than working it out.
  const { response, responseOther } = responseCauses(machine, curve, i);
  return {
    temperature: slopes.temperature * track.temperatureSd[i]!,
    pressure: (slopes.lnPressure * track.pressureSd[i]!) / track.pressure[i]!,
    response,
    responseOther,
    baseline: machine.shiftSd,
  };
}

/** Not by Math.hypot: it guards against squares too large for a number, and takes ten times as long. */
export function causesSd({ temperature, pressure, response, responseOther, baseline }: Causes): number {
  return Math.sqrt(
    temperature * temperature +
      pressure * pressure +
      response * response +
      responseOther * responseOther +
      baseline * baseline,
  );
}
