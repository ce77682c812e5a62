import {
  celsiusToKelvin,
  fahrenheitToKelvin,
  hectopascalToPascal,
  kilopascalToPascal,
} from '@/lib/units/convert';
import type { Kelvin, Pascal } from '@/lib/units/quantity';

export type StandardId = 'sae-j1349-1990' | 'sae-j1349-2004' | 'sae-j607' | 'din-70020' | 'iso-1585';

type Limits<Q> = { readonly lowest: Q; readonly highest: Q };

/**
 * A power correction standard for naturally aspirated spark-ignition engines. Every one of them is
 *
 *     factor = c (p_ref/p)^m (T/T_ref)^n - (c - 1)
 *
 * with p the dry pressure (total minus vapour pressure) or, where humidity is left out, the total one.
 */
export type PowerStandard = {
  readonly id: StandardId;
  readonly name: string;
  /** Always print it with the name: the editions differ. */
  readonly revision: string;
  readonly referencePressure: Pascal;
  readonly referenceTemperature: Kelvin;
  /** 'dry' takes the vapour pressure off; 'total' leaves humidity out. */
  readonly pressure: 'dry' | 'total';
  readonly pressureExponent: number;
  readonly temperatureExponent: number;
  /** c above: 1 where friction is left out; more where only the indicated power is corrected. */
  readonly indicatedShare: number;
  /** What the standard accepts; null where it states nothing (or nothing that could be confirmed). */
  readonly range: {
    readonly factor: Limits<number> | null;
    readonly pressure: Limits<Pascal> | null;
    readonly temperature: Limits<Kelvin> | null;
  };
};

const NO_RANGE = { factor: null, pressure: null, temperature: null } as const;

/** SAE J1349 asks for 15 to 35 °C and 90 to 105 kPa dry at the inlet (from memory, not confirmed in print). */
const J1349_RANGE = {
  factor: null,
  pressure: { lowest: kilopascalToPascal(90), highest: kilopascalToPascal(105) },
  temperature: { lowest: celsiusToKelvin(15), highest: celsiusToKelvin(35) },
} as const;

const J1349_REFERENCE = {
  name: 'SAE J1349',
  referencePressure: kilopascalToPascal(99),
  referenceTemperature: celsiusToKelvin(25),
  pressure: 'dry',
  pressureExponent: 1,
  temperatureExponent: 0.5,
  range: J1349_RANGE,
} as const;

/** Reference air and formulas; sources in the README of this folder. */
export const STANDARDS: Readonly<Record<StandardId, PowerStandard>> = {
  'sae-j1349-1990': {
    ...J1349_REFERENCE,
    id: 'sae-j1349-1990',
    revision: 'JUN1990',
    // 1/0.8475: friction is taken as 15.25 % of the indicated power, and air does not change it.
    indicatedShare: 1.18,
  },
  'sae-j1349-2004': {
    ...J1349_REFERENCE,
    id: 'sae-j1349-2004',
    revision: 'AUG2004',
    // Friction is 15 % of the indicated power; printed as 1.176.
    indicatedShare: 1 / 0.85,
  },
  'sae-j607': {
    id: 'sae-j607',
    name: 'SAE J607',
    revision: 'withdrawn, still called "standard"',
    // 29.92 inHg at the conventional inch of mercury.
    referencePressure: hectopascalToPascal(1013.2076),
    referenceTemperature: fahrenheitToKelvin(60),
    pressure: 'dry',
    pressureExponent: 1,
    temperatureExponent: 0.5,
    indicatedShare: 1,
    range: NO_RANGE,
  },
  'din-70020': {
    id: 'din-70020',
    name: 'DIN 70020',
    revision: 'part 6, 1976',
    referencePressure: hectopascalToPascal(1013),
    referenceTemperature: celsiusToKelvin(20),
    pressure: 'total',
    pressureExponent: 1,
    temperatureExponent: 0.5,
    indicatedShare: 1,
    range: NO_RANGE,
  },
  'iso-1585': {
    id: 'iso-1585',
    name: 'ISO 1585',
    revision: '1992',
    referencePressure: kilopascalToPascal(99),
    referenceTemperature: celsiusToKelvin(25),
    pressure: 'dry',
    pressureExponent: 1.2,
    temperatureExponent: 0.6,
    indicatedShare: 1,
    range: { factor: { lowest: 0.93, highest: 1.07 }, pressure: null, temperature: null },
  },
};

export const STANDARD_IDS: readonly StandardId[] = [
  'sae-j1349-1990',
  'sae-j1349-2004',
  'sae-j607',
  'din-70020',
  'iso-1585',
];
