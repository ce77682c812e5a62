import type { Air } from '@/lib/air/air';
import { sizesAt } from '@/lib/carb/ideal';
import type { Machine } from '@/lib/carb/machine';
import { type Exponents, logIdealArea } from '@/lib/carb/response';

/** The continuous main for every carburettor that keeps the baseline's mixture in given weather, in the machine's marking. */
export function idealSizes(machine: Machine, ambientAir: Air, exponents?: Exponents): number[] {
  return sizesAt(machine, logIdealArea(machine, ambientAir, exponents));
}
