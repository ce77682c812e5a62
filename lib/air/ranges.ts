import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';

/** Ranges wide enough for any place on earth where an engine runs; a number outside is a slip of the finger. */
export const RANGE = {
  temperature: { lowest: celsiusToKelvin(-70), highest: celsiusToKelvin(60) },
  /** Station pressure: 6000 m in a deep low to the Dead Sea shore in a high. */
  station: { lowest: hectopascalToPascal(450), highest: hectopascalToPascal(1100) },
  /** Sea-level pressures and altimeter settings. A station pressure from a mountain falls below this range. */
  seaLevel: { lowest: hectopascalToPascal(870), highest: hectopascalToPascal(1100) },
  elevation: { lowest: metre(-430), highest: metre(6000) },
  dewPoint: { lowest: celsiusToKelvin(-100), highest: celsiusToKelvin(60) },
  frostPoint: { lowest: celsiusToKelvin(-100), highest: celsiusToKelvin(0.01) },
} as const;

export type Range = { readonly lowest: number; readonly highest: number };

/** False for NaN too. */
export function within(value: number, range: Range): boolean {
  return value >= range.lowest && value <= range.highest;
}
