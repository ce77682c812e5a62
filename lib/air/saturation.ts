import { ZERO_CELSIUS_K } from '@/lib/units/convert';
import { type Kelvin, kelvin, type Pascal, pascal } from '@/lib/units/quantity';

/** Triple point of water [K]. Source: ITS-90. Above it there is no ice, and so no frost point. */
export const TRIPLE_POINT_K = 273.16;

/** Coldest temperature Murphy & Koop state their equations for [K]: 123 K over water, 110 K over ice. */
const COLDEST_K = 123;
/** Warmer than any air that is asked about; the water equation is used up to here in the inversion [K]. */
const WARMEST_K = 400;

/**
 * Natural log of the saturation vapour pressure over liquid water, as CIPM-2007 uses it.
 *
 *     ln p_sv = A T² + B T + C + D/T
 *
 * T [K], p_sv [Pa]. Source: Picard et al., Metrologia 45 (2008) 149, eq. A1.1.
 */
function lnSaturationCipm(t: number): number {
  return 1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t;
}

/**
 * Natural log of the saturation vapour pressure over liquid water, also supercooled.
 *
 *     ln p = 54.842763 - 6763.22/T - 4.210 ln T + 0.000367 T
 *            + tanh(0.0415 (T - 218.8)) (53.878 - 1331.22/T - 9.44523 ln T + 0.014025 T)
 *
 * T [K] 123 to 332, p [Pa]. Source: Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 10.
 */
function lnSaturationSupercooled(t: number): number {
  const lnT = Math.log(t);
  return (
    54.842763 -
    6763.22 / t -
    4.21 * lnT +
    0.000367 * t +
    Math.tanh(0.0415 * (t - 218.8)) * (53.878 - 1331.22 / t - 9.44523 * lnT + 0.014025 * t)
  );
}

/** Lifts the supercooled curve by less than a millionth so that the two meet at 0 °C without a step. */
const LN_SEAM = lnSaturationCipm(ZERO_CELSIUS_K) - lnSaturationSupercooled(ZERO_CELSIUS_K);

function lnSaturationWater(t: number): number {
  return t >= ZERO_CELSIUS_K ? lnSaturationCipm(t) : lnSaturationSupercooled(t) + LN_SEAM;
}

/**
 * Natural log of the saturation vapour pressure over ice.
 *
 *     ln p = 9.550426 - 5723.265/T + 3.53068 ln T - 0.00728332 T
 *
 * T [K] above 110, p [Pa]. Source: Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 7.
 */
function lnSaturationIce(t: number): number {
  return 9.550426 - 5723.265 / t + 3.53068 * Math.log(t) - 0.00728332 * t;
}

/**
 * Saturation vapour pressure over liquid water [Pa]: the equation of CIPM-2007 from 0 °C up, Murphy & Koop (2005)
 * for supercooled water below, where the first is only an extrapolation (0.6 % high at -40 °C).
 */
export function saturationOverWater(temperature: Kelvin): Pascal {
  return pascal(Math.exp(lnSaturationWater(temperature)));
}

/** Saturation vapour pressure over ice [Pa], Murphy & Koop (2005), for temperatures up to the triple point. */
export function saturationOverIce(temperature: Kelvin): Pascal {
  return pascal(Math.exp(lnSaturationIce(temperature)));
}

/** Slope of ln p over 1/T by Clausius and Clapeyron, -L/R_v with L of 2.5 MJ/kg [K]: good enough for a first step. */
const FIRST_SLOPE = -5_420;

/**
 * Temperature at which a curve reaches a vapour pressure. ln p is close to a straight line in 1/T, so the secant
 * method in 1/T needs few steps; a bracket around the answer catches a step that leaves it.
 */
function invert(lnCurve: (t: number) => number, lnPressure: number, warmest: number): Kelvin {
  let [low, high] = [1 / warmest, 1 / COLDEST_K];
  let inverse = 1 / ZERO_CELSIUS_K;
  let slope = FIRST_SLOPE;
  let excess = lnCurve(1 / inverse) - lnPressure;
  // Less than 1e-11 K: ln p changes by 0.05 or more per kelvin.
  for (let step = 0; step < 100 && Math.abs(excess) >= 1e-13; step++) {
    if (excess > 0) low = inverse;
    else high = inverse;
    const straight = inverse - excess / slope;
    const next = straight > low && straight < high ? straight : (low + high) / 2;
    if (next === inverse) break;
    const nextExcess = lnCurve(1 / next) - lnPressure;
    if (nextExcess !== excess) slope = (nextExcess - excess) / (next - inverse);
    inverse = next;
    excess = nextExcess;
  }
  return kelvin(1 / inverse);
}

/** Dew point of air with this vapour pressure, over liquid water; null where it is drier than the equation reaches. */
export function dewPointOf(vapourPressure: Pascal): Kelvin | null {
  const lnPressure = Math.log(vapourPressure);
  if (!(lnPressure >= lnSaturationWater(COLDEST_K))) return null;
  return invert(lnSaturationWater, lnPressure, WARMEST_K);
}

/** Frost point of air with this vapour pressure; null where there is none: drier than the equation, or no ice. */
export function frostPointOf(vapourPressure: Pascal): Kelvin | null {
  const lnPressure = Math.log(vapourPressure);
  if (!(lnPressure >= lnSaturationIce(COLDEST_K)) || lnPressure > lnSaturationIce(TRIPLE_POINT_K))
    return null;
  return invert(lnSaturationIce, lnPressure, TRIPLE_POINT_K + 1);
}
