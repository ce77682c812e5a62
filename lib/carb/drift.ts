import type { Air } from '@/lib/air/air';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { jetArea } from './jets';
import type { Machine, Setting } from './machine';
import { type Exponents, logIdealArea } from './response';
import { logTrim } from './trim';

/**
 * Natural log of the fuel each carburettor of a setting passes over what its baseline passes in the same air, or over
 * what tonight's verdicts ask of it: jet and trim, nothing else. Drift is this minus logIdealArea.
 *
 * @throws RangeError where the setting has another number of jets than the machine has carburettors
 */
export function logDelivered(machine: Machine, setting: Setting): number[] {
  if (setting.mains.length !== machine.carburettors.length)
    throw new RangeError(
      `${setting.mains.length} jets do not fit ${machine.carburettors.length} carburettors`,
    );
  const trim = logTrim(machine.trim, setting.trim);
  return machine.carburettors.map(
    ({ main }, i) =>
      Math.log(jetArea(machine.marking, setting.mains[i]!) / jetArea(machine.marking, main)) +
      trim -
      (machine.tonight?.logAreas[i] ?? 0),
  );
}

/** Drift of every carburettor: delivered mixture over the right one, minus 1; positive is rich, negative lean. */
export function drifts(machine: Machine, setting: Setting, ambientAir: Air, exponents?: Exponents): Ratio[] {
  const ideal = logIdealArea(machine, ambientAir, exponents);
  return logDelivered(machine, setting).map((delivered) => ratio(Math.expm1(delivered - ideal)));
}
