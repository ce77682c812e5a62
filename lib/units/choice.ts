import {
  celsiusToKelvin,
  fahrenheitToKelvin,
  feetToMetre,
  hectopascalToPascal,
  inchOfMercuryToPascal,
  kelvinToCelsius,
  kelvinToFahrenheit,
  kelvinToFahrenheitStep,
  kilopascalToPascal,
  metreToFeet,
  pascalToHectopascal,
  pascalToInchOfMercury,
  pascalToKilopascal,
} from './convert';
import { type Kelvin, type KelvinDifference, type Metre, metre, type Pascal } from './quantity';

export const TEMPERATURE_UNITS = ['F', 'C'] as const;
export const PRESSURE_UNITS = ['inHg', 'hPa', 'kPa', 'mbar'] as const;
export const ELEVATION_UNITS = ['ft', 'm'] as const;

export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];
export type PressureUnit = (typeof PRESSURE_UNITS)[number];
export type ElevationUnit = (typeof ELEVATION_UNITS)[number];

/** The units a person reads and types in. The core never sees them. */
export type UnitChoice = {
  readonly temperature: TemperatureUnit;
  readonly pressure: PressureUnit;
  readonly elevation: ElevationUnit;
};

export const US_UNITS: UnitChoice = { temperature: 'F', pressure: 'inHg', elevation: 'ft' };
export const METRIC_UNITS: UnitChoice = { temperature: 'C', pressure: 'hPa', elevation: 'm' };

const PRESSURE_FROM: Readonly<Record<PressureUnit, (p: number) => Pascal>> = {
  inHg: inchOfMercuryToPascal,
  hPa: hectopascalToPascal,
  kPa: kilopascalToPascal,
  mbar: hectopascalToPascal,
};
const PRESSURE_IN: Readonly<Record<PressureUnit, (p: Pascal) => number>> = {
  inHg: pascalToInchOfMercury,
  hPa: pascalToHectopascal,
  kPa: pascalToKilopascal,
  mbar: pascalToHectopascal,
};

export const temperatureFrom = (value: number, unit: TemperatureUnit): Kelvin =>
  unit === 'F' ? fahrenheitToKelvin(value) : celsiusToKelvin(value);
export const temperatureIn = (t: Kelvin, unit: TemperatureUnit): number =>
  unit === 'F' ? kelvinToFahrenheit(t) : kelvinToCelsius(t);
export const temperatureStepIn = (step: KelvinDifference, unit: TemperatureUnit): number =>
  unit === 'F' ? kelvinToFahrenheitStep(step) : step;

export const pressureFrom = (value: number, unit: PressureUnit): Pascal => PRESSURE_FROM[unit](value);
export const pressureIn = (p: Pascal, unit: PressureUnit): number => PRESSURE_IN[unit](p);

export const elevationFrom = (value: number, unit: ElevationUnit): Metre =>
  unit === 'ft' ? feetToMetre(value) : metre(value);
export const elevationIn = (h: Metre, unit: ElevationUnit): number => (unit === 'ft' ? metreToFeet(h) : h);
