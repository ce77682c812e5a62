import {
  celsiusToKelvin,
  hectopascalToPascal,
  inchOfMercuryToPascal,
  kilometrePerHourToSpeed,
} from '@/lib/units/convert';
import { type Kelvin, type Pascal, type SpeedMs, speedMs } from '@/lib/units/quantity';

// Groups of a routine report. Source: WMO-No. 306, Manual on Codes, vol. I.1, FM 15 METAR (numbers of the code's own
// paragraphs below); what only US reports have: Federal Meteorological Handbook No. 1, ch. 12.

/** CCCC, 15.2: the station. */
export const STATION = /^[A-Z][A-Z0-9]{3}$/;
/** YYGGggZ, 15.3: day of the month, hour and minute, UTC. */
export const TIME = /^(\d{2})(\d{2})(\d{2})Z$/;
/** dddffGfmfm, 15.5: direction, mean speed and gust. */
const WIND = /^(?:\d{3}|VRB|\/{3})(P?\d{2,3}|\/\/)(?:GP?\d{2,3})?(KT|MPS|KMH)$/;
/** T'T'/T'dT'd, 15.11: whole degrees, M for minus. */
const TEMPERATURES = /^(M?\d{2}|\/\/)\/(M?\d{2}|\/\/)?$/;
/** QPHPHPHPH, 15.12: whole hectopascals, or with A hundredths of an inch of mercury. */
const PRESSURE = /^([QA])(\d{4}|\/{4})$/;
/** TsnT'T'T'snT'dT'dT'd among US remarks: the same in tenths. */
const TENTHS = /^T([01])(\d{3})(?:([01])(\d{3}))?$/;

/** Knots are nautical miles an hour, exactly 1852 m. */
const KNOT_MS = 1852 / 3600;

export type Temperatures = { readonly temperature: Kelvin | null; readonly dewPoint: Kelvin | null };

/** Mean wind; null for `not observed`, undefined for another group. */
export function readWind(group: string): SpeedMs | null | undefined {
  const match = WIND.exec(group);
  if (match === null) return undefined;
  const [, speed = '', unit] = match;
  if (speed === '//') return null;
  const value = Number(speed.replace('P', ''));
  if (unit === 'KMH') return kilometrePerHourToSpeed(value);
  return speedMs(unit === 'MPS' ? value : value * KNOT_MS);
}

function wholeDegrees(text: string | undefined): Kelvin | null {
  if (text === undefined || text === '//') return null;
  const size = Number(text.replace('M', ''));
  return celsiusToKelvin(text.startsWith('M') ? -size : size);
}

export function readTemperatures(group: string): Temperatures | undefined {
  const match = TEMPERATURES.exec(group);
  if (match === null) return undefined;
  return { temperature: wholeDegrees(match[1]), dewPoint: wholeDegrees(match[2]) };
}

export function readTenths(group: string): Temperatures | undefined {
  const match = TENTHS.exec(group);
  if (match === null) return undefined;
  const tenths = (sign: string | undefined, digits: string | undefined) =>
    digits === undefined ? null : celsiusToKelvin((sign === '1' ? -1 : 1) * (Number(digits) / 10));
  return { temperature: tenths(match[1], match[2]), dewPoint: tenths(match[3], match[4]) };
}

/** Altimeter setting; null for `not observed`, undefined for another group. */
export function readPressureGroup(group: string): Pascal | null | undefined {
  const match = PRESSURE.exec(group);
  if (match === null) return undefined;
  const [, kind, digits = ''] = match;
  if (digits.startsWith('/')) return null;
  return kind === 'Q' ? hectopascalToPascal(Number(digits)) : inchOfMercuryToPascal(Number(digits) / 100);
}

/** Groups that a report may have and that say nothing about its air's density. */
const OTHERS: readonly RegExp[] = [
  // Automatic, corrected: 15.4.
  /^(AUTO|COR|CC[A-Z])$/,
  // Variable wind direction: 15.5.6.
  /^\d{3}V\d{3}$/,
  // Visibility, 15.6, in metres or statute miles, whole or in fractions.
  /^(CAVOK|\d{4}(NDV|[NESW]{1,2})?|\/{4}|[PM]?\d{1,2}SM|[PM]?\d\/\d{1,2}SM|\d|\/{2,4}SM)$/,
  // Runway visual range and state of the runway: 15.7, 15.13.6.
  /^R\d{2}[LCR]?\/\S+$/,
  // Present and recent weather: 15.8, 15.13.2.
  /^(RE|[+-])?(VC)?(MI|BC|PR|DR|BL|SH|TS|FZ)?(DZ|RA|SN|SG|IC|PL|GR|GS|UP|BR|FG|FU|VA|DU|SA|HZ|PO|SQ|FC|SS|DS|PY){1,3}$/,
  /^(RE|[+-])?(VC)?(TS|SH)$/,
  /^(NSW|\/\/|RE\/\/)$/,
  // Clouds: 15.9.
  /^((FEW|SCT|BKN|OVC|VV|\/{3})(\d{3}|\/{3})(CB|TCU|\/{3})?|SKC|CLR|NSC|NCD|\/{6}(CB|TCU))$/,
  // Wind shear, sea and its ice: 15.13.3 to 15.13.5.
  /^(WS|ALL|RWY\d{0,2}[LCR]?|R\d{2}[LCR]?|W(M?\d{2}|\/\/)\/(S\d|H\d{1,3}|S\/|H\/{3})|SNOCLO)$/,
  // Colours of a military field's state.
  /^(BLACK)?(BLU|WHT|GRN|YLO[12]?|AMB|RED)\+?$/,
];

export function saysNothing(group: string): boolean {
  return OTHERS.some((pattern) => pattern.test(group));
}

/** From these on come the trend and the remarks: 15.14, 15.15. */
export const END = /^(RMK|NOSIG|BECMG|TEMPO)$/;
