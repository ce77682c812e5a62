import {
  elevationIn,
  type PressureUnit,
  pressureIn,
  type TemperatureUnit,
  temperatureIn,
  temperatureStepIn,
  type UnitChoice,
} from './choice';
import { US_GALLON_L, wattToHorsepower } from './convert';
import type { Density, Kelvin, KelvinDifference, Metre, Pascal, Ratio, Watt } from './quantity';

/** A space that never breaks a line, so that a number and its unit stay together. */
export const NO_BREAK_SPACE = '\u00a0';
/** The minus of typography, as wide as a digit; a hyphen is easily missed at arm's length. */
export const MINUS = '\u2212';

/** Digits that show a change worth acting on: 1 °F or 0.1 °C, 0.01 inHg or 1 hPa. */
const TEMPERATURE_DIGITS: Readonly<Record<TemperatureUnit, number>> = { F: 0, C: 1 };
const PRESSURE_DIGITS: Readonly<Record<PressureUnit, number>> = { inHg: 2, hPa: 0, kPa: 1, mbar: 0 };

const withUnit = (number: string, unit: string): string => `${number}${NO_BREAK_SPACE}${unit}`;

function groupThousands(digits: string): string {
  const [whole = '', decimals] = digits.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}

/** A number with a fixed count of decimals, a real minus, thousands marked, and never a minus before zero. */
export function formatNumber(value: number, digits = 0): string {
  const size = groupThousands(Math.abs(value).toFixed(digits));
  return value < 0 && /[1-9]/.test(size) ? MINUS + size : size;
}

/** As `formatNumber`, with a plus before what is greater than zero after rounding. */
export function formatSignedNumber(value: number, digits = 0): string {
  const text = formatNumber(value, digits);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

/** A number for a table or a file that a program reads: fixed decimals at most, no sign or mark of typography. */
export function plainNumber(value: number, digits: number): number {
  // + 0 turns -0 into 0.
  return Number(value.toFixed(digits)) + 0;
}

export function formatTemperature(t: Kelvin, choice: UnitChoice, digits?: number): string {
  const unit = choice.temperature;
  return withUnit(formatNumber(temperatureIn(t, unit), digits ?? TEMPERATURE_DIGITS[unit]), `°${unit}`);
}

/** A difference of temperature, such as "3.8 °F"; it has no freezing point to count from. */
export function formatTemperatureStep(step: KelvinDifference, choice: UnitChoice, digits?: number): string {
  const unit = choice.temperature;
  return withUnit(
    formatNumber(temperatureStepIn(step, unit), digits ?? TEMPERATURE_DIGITS[unit]),
    `°${unit}`,
  );
}

/** Pressure in the chosen unit. Thousands are not marked: barometers read 1013, not 1,013. */
export function formatPressure(p: Pascal, choice: UnitChoice, digits?: number): string {
  const unit = choice.pressure;
  const text = formatNumber(pressureIn(p, unit), digits ?? PRESSURE_DIGITS[unit]);
  return withUnit(text.replaceAll(',', ''), unit);
}

export function formatElevation(h: Metre, choice: UnitChoice, digits = 0): string {
  return withUnit(formatNumber(elevationIn(h, choice.elevation), digits), choice.elevation);
}

export function formatPercent(ratio: Ratio, digits = 0): string {
  return withUnit(formatNumber(ratio * 100, digits), '%');
}

export function formatSignedPercent(ratio: Ratio, digits = 1): string {
  return withUnit(formatSignedNumber(ratio * 100, digits), '%');
}

export function formatDensity(density: Density): string {
  return withUnit(formatNumber(density, 3), 'kg/m³');
}

export function formatPower(power: Watt, digits = 0): string {
  return withUnit(formatNumber(wattToHorsepower(power), digits), 'hp');
}

export function formatSignedPower(power: Watt, digits = 1): string {
  return withUnit(formatSignedNumber(wattToHorsepower(power), digits), 'hp');
}

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const;

/** Turns of a screw as a hand can set them, in eighths: "1⅜", "¾", "0". `way` says to which side an eighth is rounded. */
export function formatEighths(value: number, way: 'nearest' | 'up' | 'down' = 'nearest'): string {
  const eighths = value * 8;
  // A hair of forgiveness, so that a whole eighth stays one through binary fractions.
  const count =
    way === 'up'
      ? Math.ceil(eighths - 1e-6)
      : way === 'down'
        ? Math.floor(eighths + 1e-6)
        : Math.round(eighths);
  const size = Math.abs(count);
  const text = `${size >= 8 ? Math.floor(size / 8) : ''}${EIGHTHS[size % 8] ?? ''}`;
  return `${count < 0 ? MINUS : ''}${text === '' ? '0' : text}`;
}

/** Whoever reads heights in feet fills a can in US gallons. */
export const fuelUnit = ({ elevation }: UnitChoice): string => (elevation === 'ft' ? 'US gal' : 'L');

/** Fuel as a can or a tank is filled; a pump's tenth is enough. */
export function formatFuel(litres: number, units: UnitChoice): string {
  const amount = units.elevation === 'ft' ? litres / US_GALLON_L : litres;
  return withUnit(formatNumber(amount, 1), fuelUnit(units));
}
