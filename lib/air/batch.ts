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
 * What the loop below reckons with, read from memory on purpose: a number that an engine knows to be constant it makes
 * anew, by two instructions, each time it is used.
 */
const LETTERS = Float64Array.of(
  ...[CIPM.alpha, CIPM.beta, CIPM.gamma],
  ...[CIPM.a0, CIPM.a1, CIPM.a2, CIPM.b0, CIPM.b1, CIPM.c0, CIPM.c1, CIPM.d, CIPM.e],
  CIPM.dryMolarMass / CIPM.gasConstant,
  1 - CIPM.waterMolarMass / CIPM.dryMolarMass,
  ZERO_CELSIUS_K,
);
const letter = (at: number): number => LETTERS[at] as number;

/** Throws a RangeError unless all columns are as long as they must be. */
function checkLengths(input: StateColumns, output: DensityColumns): void {
  const count = input.temperature.length;
  if (input.pressure.length !== count || input.relativeHumidity.length !== count)
    throw new RangeError('state columns differ in length');
  if (output.density.length < count || output.dryDensity.length < count)
    throw new RangeError('density columns are shorter than the states');
}

/**
 * Density and dry density of many states: the equations of density.ts written out in one loop, for planning over
 * thousands of states. Agrees with them to 1e-12. Values are not checked; give it states that are air, in columns
 * that share no memory with the output.
 */
export function fillDensities(input: StateColumns, output: DensityColumns): void {
  checkLengths(input, output);
  const { temperature, pressure, relativeHumidity } = input;
  const { density, dryDensity } = output;
  const count = temperature.length;
  fillSaturation(temperature, density);
  const [alpha, beta, gamma] = [letter(0), letter(1), letter(2)];
  const [a0, a1, a2, b0, b1] = [letter(3), letter(4), letter(5), letter(6), letter(7)];
  const [c0, c1, d, e] = [letter(8), letter(9), letter(10), letter(11)];
  const [molarMassOverR, lighter, zeroCelsius] = [letter(12), letter(13), letter(14)];
  for (let i = 0; i < count; i++) {
    // Indices are below every length checked above.
    const T = temperature[i] as number;
    const p = pressure[i] as number;
    const t = T - zeroCelsius;
    const vapour = (relativeHumidity[i] as number) * (density[i] as number);
    // One division serves p/T and vapour/p: divisions are slow.
    const perPT = 1 / (p * T);
    const pT = p * p * perPT;
    const x = (alpha + beta * p + gamma * (t * t)) * vapour * (T * perPT);
    // The compressibility factor is 1 - w, and 1 / (1 - w) = 1 + w + w² + w³ + w⁴ to 3e-13 where w is below 0.003.
    const w = pT * (a0 + t * (a1 + a2 * t) - pT * d + x * (b0 + b1 * t + x * (c0 + c1 * t - e * pT)));
    const first = 1 + w;
    const square = w * w;
    const dryEquivalent = pT * molarMassOverR * (first + square * (first + square));
    const displaced = dryEquivalent * x;
    density[i] = dryEquivalent - displaced * lighter;
    dryDensity[i] = dryEquivalent - displaced;
  }
}
