import type { Density, Kelvin, Metre, Pascal, Ratio } from '@/lib/units/quantity';

/** How humid air was described. Relative humidity is over liquid water at every temperature (WMO convention). */
export type Humidity =
  | { readonly kind: 'relative'; readonly value: Ratio }
  | { readonly kind: 'dew-point'; readonly value: Kelvin }
  | { readonly kind: 'frost-point'; readonly value: Kelvin };

/** Which pressure a person or a service gave. Only `station` is the pressure the engine breathes. */
export type PressureGiven =
  | { readonly kind: 'station'; readonly value: Pascal; readonly elevation?: Metre }
  | { readonly kind: 'altimeter'; readonly value: Pascal; readonly elevation: Metre }
  | { readonly kind: 'sea-level'; readonly value: Pascal; readonly elevation: Metre }
  | { readonly kind: 'standard'; readonly elevation: Metre };

export type PressureKind = PressureGiven['kind'];

export type AirGiven = {
  readonly temperature: Kelvin;
  readonly pressure: PressureGiven;
  readonly humidity: Humidity;
};

/** Moist air, fully described. `pressure` is station pressure. */
export type Air = {
  readonly temperature: Kelvin;
  readonly pressure: Pascal;
  /** What the pressure was derived from; 'standard' means it is an estimate. */
  readonly pressureFrom: PressureKind;
  /** With the enhancement factor of real air: 0.4 % more than `vapourPressure / pressure`. */
  readonly vapourMoleFraction: Ratio;
  /** Relative humidity times saturation pressure, as weather services and engine test codes reckon it. */
  readonly vapourPressure: Pascal;
  readonly relativeHumidity: Ratio;
  /** Over liquid water; null where the air holds no water at all. */
  readonly dewPoint: Kelvin | null;
  /** Over ice; null where the air holds no water, and where it holds too much for frost (above 0.01 °C). */
  readonly frostPoint: Kelvin | null;
  readonly density: Density;
  readonly dryDensity: Density;
  /** Density over the 1.225 kg/m³ of ISO 2533 at sea level. */
  readonly relativeDensity: Ratio;
  readonly densityAltitude: Metre;
};

/** Why given numbers are not air. Sentences for these live in lib/words. */
export type AirProblem =
  | { readonly code: 'temperature-out-of-range'; readonly temperature: number }
  | { readonly code: 'pressure-out-of-range'; readonly pressure: number; readonly kind: PressureKind }
  | { readonly code: 'elevation-out-of-range'; readonly elevation: number }
  | { readonly code: 'humidity-out-of-range'; readonly value: number; readonly kind: Humidity['kind'] }
  | { readonly code: 'dew-point-above-temperature'; readonly dewPoint: number; readonly temperature: number }
  /** A station pressure that the elevation cannot have: almost surely a sea-level or altimeter number. */
  | {
      readonly code: 'sea-level-number-as-station';
      readonly pressure: number;
      readonly elevation: number;
      /** What the station pressure would be if the number were a sea-level one [Pa]. */
      readonly stationIfSeaLevel: number;
    }
  /** A station pressure too low for the elevation: the elevation is wrong, or the number is. */
  | {
      readonly code: 'pressure-too-low-for-elevation';
      readonly pressure: number;
      readonly elevation: number;
      /** Standard pressure at the elevation [Pa]. */
      readonly standard: number;
    };
