import { ZERO_CELSIUS_K } from '@/lib/units/convert';
import { CIPM } from './density';
import { fillSaturation } from './saturation-table';

/** Many states at once, one per index: temperature [K], station pressure [Pa], relative humidity over water [1]. */
export type StateColumns = {
  readonly temperature: Float64Array;
  readonly pressure: Float64Array;
  readonly relativeHumidity: Float64Array;
};

/** Where the answers go [kg/m³]. These are written to; they are the point of the call. */
export type DensityColumns = { readonly density: Float64Array; readonly dryDensity: Float64Array };

/**
 * Density and dry density of many states: the equations of density.ts written out in one loop, for planning over
 * thousands of states. Divisions are slow, so with v = f e = x p, the partial pressure of the vapour, compressibility is
 * multiplied through by T² p, and one division is left:
 *
 *     Z T² p = p [T (T − p (a0 + a1 t + a2 t²) − v (b0 + b1 t)) + d p² + e v²] − T v² (c0 + c1 t)
 *     ρ = M_a/R · p T (p − (1 − M_v/M_a) v) / (Z T² p),   ρ_dry = M_a/R · p T (p − v) / (Z T² p)
 *
 * Agrees with them to 1e-12. Values are not checked; give it states that are air, in columns
 * that share no memory with the output.
 */
export function fillDensities(input: StateColumns, output: DensityColumns): void {
  const { temperature, pressure, relativeHumidity } = input;
  const { density, dryDensity } = output;
  const count = temperature.length;
  if (pressure.length !== count || relativeHumidity.length !== count)
    throw new RangeError('state columns differ in length');
  if (density.length < count || dryDensity.length < count)
    throw new RangeError('density columns are shorter than the states');
  fillSaturation(temperature, density);
  const { alpha, beta, gamma, a0, a1, a2, b0, b1, c0, c1, d, e } = CIPM;
  const zeroCelsius = ZERO_CELSIUS_K;
  const molarMassOverR = CIPM.dryMolarMass / CIPM.gasConstant;
  const lighter = 1 - CIPM.waterMolarMass / CIPM.dryMolarMass;
  for (let i = 0; i < count; i++) {
    // Indices are below every length checked above.
    const T = temperature[i] as number;
    const p = pressure[i] as number;
    const t = T - zeroCelsius;
    const vapour =
      (alpha + beta * p + gamma * t * t) * (relativeHumidity[i] as number) * (density[i] as number);
    const vapours = vapour * vapour;
    const zTTp =
      p * (T * (T - p * (a0 + t * (a1 + a2 * t)) - vapour * (b0 + b1 * t)) + d * p * p + e * vapours) -
      T * vapours * (c0 + c1 * t);
    const each = (molarMassOverR * (p * T)) / zTTp;
    density[i] = each * (p - vapour * lighter);
    dryDensity[i] = each * (p - vapour);
  }
}
