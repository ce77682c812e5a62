import { type KelvinDifference, kelvinDifference } from '@/lib/units/quantity';

export type IntakeChoice = 'ducted' | 'open' | 'hood';

/**
 * Air at the carburettor minus ambient air, by how the engine draws it: a sealed airbox fed from outside, filters in
 * a partly open engine bay, or everything under a closed hood. Common practice, no source; a thermometer at the
 * carburettor is better than any of them.
 */
export const INTAKE_CHOICES: Readonly<Record<IntakeChoice, KelvinDifference>> = {
  ducted: kelvinDifference(3),
  open: kelvinDifference(10),
  hood: kelvinDifference(28),
};
