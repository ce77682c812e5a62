import type { Air } from '@/lib/air/air';
import { fuelDensityRatio } from './fuel-density';
import { intakeAir } from './intake';
import type { Machine, Response } from './machine';
import { logNeed, type MeteredAir } from './need';

/** The part of a response that a single path of the future has: two exponents. */
export type Exponents = { readonly pressure: number; readonly temperature: number };

/** Jet area as the square root of density: the orifice law, one end of trade practice. */
export const ORIFICE_LAW: Exponents = { pressure: 0.5, temperature: 0.5 };

/**
 * Belief before the person's own chart or log has spoken. Judgement between the two ends of practice; no source gives
 * a distribution.
 */
export const DEFAULT_RESPONSE: Response = {
  pressureExponent: 0.65,
  temperatureExponent: 0.65,
  pressureSd: 0.12,
  temperatureSd: 0.12,
  correlation: 0.7,
};

export function exponentsOf(response: Response): Exponents {
  return { pressure: response.pressureExponent, temperature: response.temperatureExponent };
}

/** Air at the carburettor as far as jetting needs it. */
export type BreathedAir = MeteredAir & Pick<Air, 'temperature' | 'pressure'>;

/** How far air is from the baseline's, in the three logs that jetting is linear in. */
export type AirShift = {
  /** ln need, the orifice law with humidity and fuel density. */
  readonly need: number;
  /** ln(p/p0). */
  readonly pressure: number;
  /** ln(T0/T); positive when colder. */
  readonly cold: number;
};

export function airShift(
  air: BreathedAir,
  baselineAir: BreathedAir,
  need = logNeed(air, baselineAir),
): AirShift {
  return {
    need,
    pressure: Math.log(air.pressure / baselineAir.pressure),
    cold: Math.log(baselineAir.temperature / air.temperature),
  };
}

/**
 * Natural log of the ideal main-jet area over the baseline's.
 *
 * A main works in series with the needle-jet annulus and beside the pilot circuit. Charts move mains more than the pure
 * orifice law does. So pressure and temperature carry exponents of their own:
 *
 *     ln(A/A0) = ln need + (n_p − ½) ln(p/p0) + (n_T − ½) ln(T0/T)
 *
 * where (½, ½) is the orifice law and (1, 1) is area in proportion to density.
 */
export function logAreaOf(shift: AirShift, exponents: Exponents): number {
  return (
    shift.need + (exponents.pressure - 0.5) * shift.pressure + (exponents.temperature - 0.5) * shift.cold
  );
}

/** The shift of a machine's carburettor air in given weather from its baseline's. */
export function machineAirShift(machine: Machine, ambientAir: Air): AirShift {
  const air = intakeAir(ambientAir, machine.intakeOffset);
  const baselineAir = intakeAir(machine.baselineAir, machine.baselineIntakeOffset);
  const need = logNeed(air, baselineAir, fuelDensityRatio(machine.fuelDensity, ambientAir.temperature));
  return airShift(air, baselineAir, need);
}

/**
 * Natural log of the ideal main-jet area over the baseline jet's, in given weather.
 *
 * @param ambientAir the weather; the intake offset is added here
 * @param exponents of one path; the mean of the machine's response by default
 */
export function logIdealArea(
  machine: Machine,
  ambientAir: Air,
  exponents: Exponents = exponentsOf(machine.response),
): number {
  return (machine.baselineShift?.log ?? 0) + logAreaOf(machineAirShift(machine, ambientAir), exponents);
}

/** Standard deviation of logIdealArea in given air: what not knowing the response and the baseline exactly is worth. */
export function logIdealSd(machine: Machine, ambientAir: Air): number {
  const { pressure, cold } = machineAirShift(machine, ambientAir);
  const { pressureSd, temperatureSd, correlation } = machine.response;
  const fromPressure = pressure * pressureSd;
  const fromCold = cold * temperatureSd;
  const baselineSd = machine.baselineShift?.sd ?? 0;
  return Math.sqrt(
    fromPressure ** 2 + fromCold ** 2 + 2 * correlation * fromPressure * fromCold + baselineSd ** 2,
  );
}
