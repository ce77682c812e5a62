import type { Air } from '@/lib/air/air';
import { type Ratio, ratio } from '@/lib/units/quantity';

/** The two densities a carburettor cares about: all of the air pulls fuel, only the dry part burns it. */
export type MeteredAir = Pick<Air, 'density' | 'dryDensity'>;

/**
 * Natural log of the fuel area that keeps the baseline's mixture, relative to the baseline's area.
 *
 * At a fixed air speed the venturi depression is ½ρv², and a jet passes C_d A √(2 ρ_f Δp), so fuel goes with
 * A √(ρ_f ρ) while the oxygen goes with the dry density:
 *
 *     need = (ρ_dry/ρ_dry0) / √((ρ/ρ0)(ρ_f/ρ_f0))
 *
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals, section 7.2, elementary carburettor (equation number
 * not confirmed), with humidity split off as in its section on inlet-mixture moisture.
 *
 * @param air at the carburettor now
 * @param baselineAir at the carburettor when the baseline was proven
 * @param fuelDensityRatio ρ_f/ρ_f0; 1 by default
 */
export function logNeed(
  air: MeteredAir,
  baselineAir: MeteredAir,
  fuelDensityRatio: Ratio = ratio(1),
): number {
  const oxygen = Math.log(air.dryDensity / baselineAir.dryDensity);
  const signal = Math.log(air.density / baselineAir.density) + Math.log(fuelDensityRatio);
  return oxygen - signal / 2;
}
