import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin, kilometrePerHourToSpeed } from '@/lib/units/convert';
import { type Kelvin, type Metre, metre, type Pascal, pascal } from '@/lib/units/quantity';
import type { Coordinates } from '@/lib/weather/place';
import type { AnswerProblem } from '@/lib/weather/problem';
import type { PlacedObservation } from '@/lib/weather/stations/observation';
import type { Latest, MeasuredValue } from './station-schema';

/** A station as it is listed. */
export type Station = {
  readonly id: string;
  readonly name: string;
  readonly place: Coordinates;
  readonly elevation: Metre;
};

/** An observation as the service tells it, with what it can be held against. */
export type ToldObservation = Omit<PlacedObservation, 'temperature'> & {
  readonly temperature: Kelvin | null;
  /** 0 to 1 in good air; null: not told. */
  readonly relativeHumidity: number | null;
  readonly seaLevel: Pascal | null;
  /** The report as it was broadcast; '' where there is none. */
  readonly report: string;
};

/** What the service's own checks refuse or question (MADIS: X rejected, Q questioned, B set aside by hand). */
const REFUSED = /^[XQB]$/;

type Unit = { readonly unit: string; readonly field: string };

/** The number in the unit it should have; null where it is missing or refused. */
function told(given: MeasuredValue | undefined, { unit, field }: Unit): Result<number | null, AnswerProblem> {
  if (given === undefined || given.value === null) return ok(null);
  if (given.unitCode !== unit) return fail({ code: 'wrong-units', field, unit: given.unitCode });
  return ok(REFUSED.test(given.qualityControl ?? '') ? null : given.value);
}

const DEGREES = 'wmoUnit:degC';
const UNITS = {
  temperature: DEGREES,
  dewpoint: DEGREES,
  relativeHumidity: 'wmoUnit:percent',
  barometricPressure: 'wmoUnit:Pa',
  seaLevelPressure: 'wmoUnit:Pa',
  windSpeed: 'wmoUnit:km_h-1',
} as const;
type Field = keyof typeof UNITS;

const placeOf = ([longitude, latitude]: Latest['geometry']['coordinates']): Coordinates => ({
  latitude,
  longitude,
});

/** Wire to our own terms: units checked, missing stays missing. */
export function adaptObservation(wire: Latest, station: Station): Result<ToldObservation, AnswerProblem> {
  const at = readInstant(wire.timestamp);
  if (!at.ok) return fail({ code: 'unexpected-shape', field: 'properties.timestamp' });
  if (wire.elevation.unitCode !== 'wmoUnit:m')
    return fail({ code: 'wrong-units', field: 'elevation', unit: wire.elevation.unitCode });
  const values = new Map<Field, number>();
  // The keys of a constant object.
  for (const field of Object.keys(UNITS) as Field[]) {
    const value = told(wire[field], { unit: UNITS[field], field });
    if (!value.ok) return value;
    if (value.value !== null) values.set(field, value.value);
  }
  const odd = implausible(values);
  if (odd !== null) return fail(odd);
  const get = <Q>(field: Field, as: (value: number) => Q): Q | null => {
    const value = values.get(field);
    return value === undefined ? null : as(value);
  };
  return ok({
    station: wire.station.split('/').at(-1) ?? '',
    name: station.name,
    place: placeOf(wire.geometry.coordinates),
    elevation: metre(wire.elevation.value),
    at: at.value,
    temperature: get('temperature', celsiusToKelvin),
    dewPoint: get('dewpoint', celsiusToKelvin),
    relativeHumidity: get('relativeHumidity', (percent) => percent / 100),
    // The name says pressure; the number is the altimeter setting.
    altimeter: get('barometricPressure', pascal),
    seaLevel: get('seaLevelPressure', pascal),
    wind: get('windSpeed', kilometrePerHourToSpeed),
    report: wire.rawMessage ?? '',
  });
}

/** A number that no air can have: other units, or station pressure in the place of the altimeter setting. */
function implausible(values: ReadonlyMap<Field, number>): AnswerProblem | null {
  const checks = [
    ['temperature', (value: number) => within(celsiusToKelvin(value), RANGE.temperature)],
    ['dewpoint', (value: number) => within(celsiusToKelvin(value), RANGE.dewPoint)],
    ['barometricPressure', (value: number) => within(value, RANGE.seaLevel)],
    ['seaLevelPressure', (value: number) => within(value, RANGE.seaLevel)],
  ] as const;
  for (const [field, isGood] of checks) {
    const value = values.get(field);
    if (value !== undefined && !isGood(value)) return { code: 'implausible', field, value };
  }
  return null;
}
