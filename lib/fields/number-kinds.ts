import { ok, type Result } from '@/lib/result/result';
import { temperatureStepIn, type UnitChoice } from '@/lib/units/choice';
import {
  celsiusToKelvin,
  hectopascalToPascal,
  kelvinToCelsius,
  pascalToHectopascal,
  US_GALLON_L,
} from '@/lib/units/convert';
import {
  readElevation,
  readNumber,
  readPercent,
  readPressure,
  readTemperature,
  readTemperatureStep,
} from '@/lib/units/entry';
import type { EntryProblem } from '@/lib/units/entry-number';
import {
  elevationText,
  numberText,
  percentText,
  pressureText,
  temperatureStepText,
  temperatureText,
} from '@/lib/units/entry-text';
import { readTurns } from '@/lib/units/entry-turns';
import { fuelUnit } from '@/lib/units/format';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';
import { speedFrom, speedIn, speedUnit } from '@/lib/words/log';
import type { FieldKind, NumberKind } from './field-row';

/** Metres in the thousand that a fall is counted over, and kilometres in the mile or kilometre of a way. */
export const THOUSAND_M = { ft: 304.8, m: 1000 } as const;
export const WAY_KM = { ft: 1.609344, m: 1 } as const;

type KindOfNumber = {
  /** The unit of a bare number. */
  readonly unit: (units: UnitChoice) => string | undefined;
  /** What is typed, in the unit of the JSON: °C, K, hPa, m, a share of one, km/h, km, K over a kilometre. */
  readonly read: (text: string, units: UnitChoice) => Result<number, EntryProblem>;
  /** The text that a value of the JSON becomes. */
  readonly write: (value: number, units: UnitChoice) => string;
  readonly signed?: true;
};

/** Litres in what a pump counts. */
const FUEL_L = { ft: US_GALLON_L, m: 1 } as const;
const degrees = ({ temperature }: UnitChoice): string => `°${temperature}`;

function turned<Q extends number>(
  read: Result<Q, EntryProblem>,
  turn: (quantity: Q) => number,
): Result<number, EntryProblem> {
  return read.ok ? ok(turn(read.value)) : read;
}

export const NUMBER_KINDS: Readonly<Record<NumberKind, KindOfNumber>> = {
  number: { unit: () => undefined, read: readNumber, write: (value) => numberText(value) },
  temperature: {
    unit: degrees,
    read: (text, units) => turned(readTemperature(text, units.temperature), kelvinToCelsius),
    write: (celsius, units) => temperatureText(celsiusToKelvin(celsius), units),
    signed: true,
  },
  step: {
    unit: degrees,
    read: (text, units) => readTemperatureStep(text, units.temperature),
    write: (step, units) => temperatureStepText(kelvinDifference(step), units),
    signed: true,
  },
  pressure: {
    unit: ({ pressure }) => pressure,
    read: (text, units) => turned(readPressure(text, units.pressure), pascalToHectopascal),
    write: (hpa, units) => pressureText(hectopascalToPascal(hpa), units),
  },
  elevation: {
    unit: ({ elevation }) => elevation,
    read: (text, units) => readElevation(text, units.elevation),
    write: (metres, units) => elevationText(metre(metres), units),
  },
  percent: { unit: () => '%', read: readPercent, write: (share) => percentText(ratio(share)) },
  speed: {
    unit: speedUnit,
    read: (text, units) => turned(readNumber(text), (value) => speedFrom(value, speedUnit(units))),
    write: (kmh, units) => numberText(speedIn(kmh, speedUnit(units)), 4),
  },
  way: {
    unit: ({ elevation }) => (elevation === 'ft' ? 'mi' : 'km'),
    read: (text, { elevation }) => turned(readNumber(text), (value) => value * WAY_KM[elevation]),
    write: (kilometres, { elevation }) => numberText(kilometres / WAY_KM[elevation], 2),
  },
  fall: {
    unit: degrees,
    read: (text, { elevation, temperature }) =>
      turned(readTemperatureStep(text, temperature), (step) => (step * 1000) / THOUSAND_M[elevation]),
    write: (perKilometre, { elevation, temperature }) =>
      numberText(
        temperatureStepIn(kelvinDifference((perKilometre * THOUSAND_M[elevation]) / 1000), temperature),
        3,
      ),
    signed: true,
  },
  fuel: {
    unit: fuelUnit,
    read: (text, units) => turned(readNumber(text), (value) => value * FUEL_L[units.elevation]),
    write: (litres, units) => numberText(litres / FUEL_L[units.elevation], 2),
  },
  turns: { unit: () => undefined, read: readTurns, write: (value) => numberText(value) },
};

export const isNumberKind = (kind: FieldKind): kind is NumberKind => Object.hasOwn(NUMBER_KINDS, kind);
