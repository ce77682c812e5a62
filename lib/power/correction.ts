import type { Air } from '@/lib/air/air';
import { type Kelvin, type Pascal, pascal, type Ratio, ratio } from '@/lib/units/quantity';
import { type PowerStandard, STANDARDS, type StandardId } from './standards';

/** Why a corrected power should be read with care. Sentences for these live in lib/words. */
export type CorrectionCaveat =
  | {
      readonly code: 'factor-outside-range';
      readonly factor: Ratio;
      readonly lowest: number;
      readonly highest: number;
    }
  | {
      readonly code: 'temperature-outside-range';
      readonly temperature: Kelvin;
      readonly lowest: Kelvin;
      readonly highest: Kelvin;
    }
  | {
      readonly code: 'pressure-outside-range';
      /** Which pressure the standard goes by: the station pressure, or what is left of it without water vapour. */
      readonly of: 'dry' | 'total';
      readonly pressure: Pascal;
      readonly lowest: Pascal;
      readonly highest: Pascal;
    }
  /** The standard leaves humidity out, and this air holds enough water to matter (over 0.5 % of its pressure). */
  | { readonly code: 'humidity-left-out'; readonly vapourShare: Ratio }
  /** The pressure is the standard atmosphere's, not a measured one. */
  | { readonly code: 'pressure-estimated' };

/** Corrected power = measured power × factor. */
export type Correction = {
  readonly standard: PowerStandard;
  readonly factor: Ratio;
  readonly caveats: readonly CorrectionCaveat[];
};

const HUMIDITY_WORTH_SAYING = 0.005;

/** Pressure without water vapour [Pa]: the air an engine can burn fuel with. */
export function dryPressure(air: Air): Pascal {
  return pascal(air.pressure - air.vapourPressure);
}

/**
 * Factor that turns power measured in this air into power in the standard's reference air.
 *
 *     factor = c (p_ref/p)^m (T/T_ref)^n - (c - 1)
 *
 * `air` is the air at the engine's inlet. Sources: the standards named in standards.ts.
 */
export function correctionFactor(id: StandardId, air: Air): Ratio {
  const standard = STANDARDS[id];
  const { referencePressure, referenceTemperature, pressureExponent: m, temperatureExponent: n } = standard;
  const c = standard.indicatedShare;
  const pressure = standard.pressure === 'dry' ? dryPressure(air) : air.pressure;
  return ratio(
    c * (referencePressure / pressure) ** m * (air.temperature / referenceTemperature) ** n - (c - 1),
  );
}

function caveatsOf(standard: PowerStandard, air: Air, factor: Ratio): readonly CorrectionCaveat[] {
  const { range } = standard;
  const pressure = standard.pressure === 'dry' ? dryPressure(air) : air.pressure;
  const outside = (value: number, limits: { readonly lowest: number; readonly highest: number } | null) =>
    limits !== null && (value < limits.lowest || value > limits.highest);
  const caveats: CorrectionCaveat[] = [];
  if (range.factor !== null && outside(factor, range.factor))
    caveats.push({ code: 'factor-outside-range', factor, ...range.factor });
  if (range.temperature !== null && outside(air.temperature, range.temperature))
    caveats.push({ code: 'temperature-outside-range', temperature: air.temperature, ...range.temperature });
  if (range.pressure !== null && outside(pressure, range.pressure))
    caveats.push({ code: 'pressure-outside-range', of: standard.pressure, pressure, ...range.pressure });
  const vapourShare = ratio(air.vapourPressure / air.pressure);
  if (standard.pressure === 'total' && vapourShare > HUMIDITY_WORTH_SAYING)
    caveats.push({ code: 'humidity-left-out', vapourShare });
  if (air.pressureFrom === 'standard') caveats.push({ code: 'pressure-estimated' });
  return caveats;
}

/** The factor of a standard in this air, with what the standard itself says against using it there. */
export function correction(id: StandardId, air: Air): Correction {
  const standard = STANDARDS[id];
  const factor = correctionFactor(id, air);
  return { standard, factor, caveats: caveatsOf(standard, air, factor) };
}
