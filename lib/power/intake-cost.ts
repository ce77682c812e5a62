import type { Air } from '@/lib/air/air';
import { intakeAir } from '@/lib/carb/intake';
import { type KelvinDifference, type Ratio, ratio } from '@/lib/units/quantity';
import { airFactor } from './relative-power';

/**
 * Share of power that drawing warmer air costs, the mixture kept right; negative is a loss.
 *
 *     cost = (p_d/p_d0) sqrt(T0/T) - 1
 *
 * 0 the air with `from` added to the weather's temperature, without index with `to`. Source: as airFactor.
 */
export function intakeCost(
  ambientAir: Air,
  offsets: { readonly from: KelvinDifference; readonly to: KelvinDifference },
): Ratio {
  return ratio(airFactor(intakeAir(ambientAir, offsets.to), intakeAir(ambientAir, offsets.from)) - 1);
}
