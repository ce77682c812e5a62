import { kelvin } from '@/lib/units/quantity';
import { saturationOverWater } from './saturation';

/** From the coldest air to air under a hot hood, -100 to 130 °C [K]. 0 °C is a knot, since the curves join there. */
const COLDEST_K = 173.15;
const WIDTH_K = 230;
const CELLS_PER_KELVIN = 5;
const CELLS = WIDTH_K * CELLS_PER_KELVIN;

/** Cubic through four values at 0, 1/3, 2/3 and 1, as coefficients of 1, u, u², u³ (Lagrange). */
function cubicThrough(values: readonly [number, number, number, number]): [number, number, number, number] {
  const [y0, y1, y2, y3] = values;
  return [
    y0,
    (-11 * y0 + 18 * y1 - 9 * y2 + 2 * y3) / 2,
    (9 * (2 * y0 - 5 * y1 + 4 * y2 - y3)) / 2,
    (9 * (-y0 + 3 * y1 - 3 * y2 + y3)) / 2,
  ];
}

/**
 * Saturation pressure over water as cubics, one for each fifth of a kelvin, four coefficients each: so close to the
 * equation that densities from either agree to 1e-12. It spares the planner an exponential, a logarithm and a
 * hyperbolic tangent for every state. Empty until it is first asked for.
 */
const cubics = new Float64Array(CELLS * 4);
let built = false;

function buildCubics(): void {
  const at = (cell: number, thirds: number) =>
    saturationOverWater(kelvin(COLDEST_K + (cell + thirds / 3) / CELLS_PER_KELVIN));
  for (let cell = 0; cell < CELLS; cell++)
    cubics.set(cubicThrough([at(cell, 0), at(cell, 1), at(cell, 2), at(cell, 3)]), cell * 4);
  built = true;
}

/**
 * Writes the saturation pressure over water [Pa] for every temperature [K]. The cubics are built on first use (about
 * a millisecond); outside them the equation itself is used.
 */
export function fillSaturation(temperature: Float64Array, saturation: Float64Array): void {
  if (!built) buildCubics();
  const count = temperature.length;
  for (let i = 0; i < count; i++) {
    // `i` and `at` are below the lengths of their arrays.
    const t = temperature[i] as number;
    const place = (t - COLDEST_K) * CELLS_PER_KELVIN;
    const cell = place | 0;
    if (place >= 0 && cell < CELLS) {
      const u = place - cell;
      const at = cell << 2;
      saturation[i] =
        (cubics[at] as number) +
        u * (cubics[at + 1] as number) +
        // Apart, so that a processor can reckon both halves at a time.
        u * u * ((cubics[at + 2] as number) + u * (cubics[at + 3] as number));
    } else {
      saturation[i] = saturationOverWater(kelvin(t));
    }
  }
}
