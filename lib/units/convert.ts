import {
  type Kelvin,
  type KelvinDifference,
  kelvin,
  kelvinDifference,
  type Metre,
  metre,
  type Pascal,
  pascal,
  type SpeedMs,
  speedMs,
  type Watt,
  watt,
} from './quantity';

/** Exact by definition unless a source is given. The only place where units other than SI exist. */
export const ZERO_CELSIUS_K = 273.15;
/** International foot [m], exact since 1959. */
const FOOT_M = 0.3048;
/** Conventional inch of mercury at 0 °C [Pa]. Source: NIST SP 811 (2008), appendix B.8. */
const INCH_OF_MERCURY_PA = 3386.389;
/** Conventional millimetre of mercury [Pa]. Source: NIST SP 811 (2008), appendix B.8. */
const MILLIMETRE_OF_MERCURY_PA = 133.3224;
/** Mechanical horsepower (550 ft·lbf/s) [W]. Source: NIST SP 811 (2008), appendix B.8. */
const HORSEPOWER_W = 745.6999;

export const celsiusToKelvin = (t: number): Kelvin => kelvin(t + ZERO_CELSIUS_K);
export const kelvinToCelsius = (t: Kelvin): number => t - ZERO_CELSIUS_K;
export const fahrenheitToKelvin = (t: number): Kelvin => kelvin((t - 32) / 1.8 + ZERO_CELSIUS_K);
export const kelvinToFahrenheit = (t: Kelvin): number => (t - ZERO_CELSIUS_K) * 1.8 + 32;
export const fahrenheitStepToKelvin = (step: number): KelvinDifference => kelvinDifference(step / 1.8);
export const kelvinToFahrenheitStep = (step: KelvinDifference): number => step * 1.8;

export const hectopascalToPascal = (p: number): Pascal => pascal(p * 100);
export const pascalToHectopascal = (p: Pascal): number => p / 100;
export const kilopascalToPascal = (p: number): Pascal => pascal(p * 1000);
export const pascalToKilopascal = (p: Pascal): number => p / 1000;
export const inchOfMercuryToPascal = (p: number): Pascal => pascal(p * INCH_OF_MERCURY_PA);
export const pascalToInchOfMercury = (p: Pascal): number => p / INCH_OF_MERCURY_PA;
export const millimetreOfMercuryToPascal = (p: number): Pascal => pascal(p * MILLIMETRE_OF_MERCURY_PA);

export const feetToMetre = (h: number): Metre => metre(h * FOOT_M);
export const metreToFeet = (h: Metre): number => h / FOOT_M;

export const horsepowerToWatt = (p: number): Watt => watt(p * HORSEPOWER_W);
export const wattToHorsepower = (p: Watt): number => p / HORSEPOWER_W;

/** US gallon [L], exact: 231 cubic inches of 2.54 cm. */
export const US_GALLON_L = 3.785_411_784;

/** International mile [m], exact. */
export const MILE_M = 1609.344;
export const kilometrePerHourToSpeed = (v: number): SpeedMs => speedMs(v / 3.6);
