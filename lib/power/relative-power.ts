import type { Air } from '@/lib/air/air';
import { type Ratio, ratio, type Second, second } from '@/lib/units/quantity';
import { dryPressure } from './correction';

/** k of power = 1 - k drift², rich side. An assumption, shown and editable: published curves differ. */
export const DEFAULT_RICH_POWER_LOSS = 2;

/**
 * Share of power a rich mixture leaves.
 *
 *     mixture factor = 1 - k max(0, drift)²
 *
 * Lean of the baseline, published curves differ by ten points, so lean counts as neither gain nor loss here; it is
 * counted as risk elsewhere. Form from memory of the shape of the curves in Heywood, Internal Combustion Engine
 * Fundamentals, ch. 15; k is an assumption.
 */
export function mixtureFactor(drift: Ratio, richPowerLoss: number): Ratio {
  const rich = Math.max(0, drift);
  return ratio(Math.max(0, 1 - richPowerLoss * rich * rich));
}

/**
 * Share of power the air leaves, against the baseline's air.
 *
 *     air factor = (p_d/p_d0) sqrt(T0/T)
 *
 * p_d dry pressure, T temperature, both at the carburettor. Source: the form shared by SAE J607 and the indicated
 * part of SAE J1349.
 */
export function airFactor(air: Air, baselineAir: Air): Ratio {
  return ratio(
    (dryPressure(air) / dryPressure(baselineAir)) * Math.sqrt(baselineAir.temperature / air.temperature),
  );
}

/** Expected power in given air and mixture, over the power of the baseline in its own air. Airs at the carburettor. */
export function relativePower(given: {
  readonly air: Air;
  readonly baselineAir: Air;
  /** Delivered mixture over the baseline's, minus 1. */
  readonly drift: Ratio;
  readonly richPowerLoss: number;
}): Ratio {
  return ratio(airFactor(given.air, given.baselineAir) * mixtureFactor(given.drift, given.richPowerLoss));
}

/**
 * Speed ratio that a power ratio gives.
 *
 *     v/v0 = (P/P0)^(1/3)
 *
 * At top speed drag takes v² and power v³; from a standing start at constant power t = (9 m s²/8P)^(1/3), the same
 * third root. (Mechanics; rolling and track drag left out.)
 */
export function speedRatio(powerRatio: Ratio): Ratio {
  return ratio(Math.cbrt(powerRatio));
}

/** Time over the same distance at another power [s]. */
export function timeAtPower(time: Second, powerRatio: Ratio): Second {
  return second(time / speedRatio(powerRatio));
}
