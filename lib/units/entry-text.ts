import { elevationIn, pressureIn, temperatureIn, temperatureStepIn, type UnitChoice } from './choice';
import { plainNumber } from './format';
import type { Kelvin, KelvinDifference, Metre, Pascal, Ratio } from './quantity';

/**
 * Text for a field to be edited in: no unit, no thousands marks, as few digits as it takes. Read back it gives the
 * quantity to within half of the last digit kept here, so saving what nobody touched changes nothing that counts.
 */
const TEMPERATURE_DIGITS = 3;
const PRESSURE_DIGITS = 4;
const ELEVATION_DIGITS = 2;

/** A number without the tail that binary fractions grow (5.000000000000001). */
export function numberText(value: number, digits = 6): string {
  return String(plainNumber(value, digits));
}

export function temperatureText(t: Kelvin, { temperature }: UnitChoice): string {
  return numberText(temperatureIn(t, temperature), TEMPERATURE_DIGITS);
}

export function temperatureStepText(step: KelvinDifference, { temperature }: UnitChoice): string {
  return numberText(temperatureStepIn(step, temperature), TEMPERATURE_DIGITS);
}

export function pressureText(p: Pascal, { pressure }: UnitChoice): string {
  return numberText(pressureIn(p, pressure), PRESSURE_DIGITS);
}

export function elevationText(h: Metre, { elevation }: UnitChoice): string {
  return numberText(elevationIn(h, elevation), ELEVATION_DIGITS);
}

export function percentText(ratio: Ratio): string {
  return numberText(ratio * 100);
}

/** A converted number without the dust of binary fractions: -20 °C stays -20 on the way through kelvin and back. */
export function withoutDust(value: number): number {
  return plainNumber(value, 9);
}
