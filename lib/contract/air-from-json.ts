import type { Air, AirGiven, AirProblem, Humidity, PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { fail, type Result } from '@/lib/result/result';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import type { AirStateJson } from './air';
import { pressureField, pressureGiven, pressureSaid } from './pressure';
import type { ContractProblem, Path } from './problem';

/**
 * Humidity where none was given. At -20 °C the whole way from 0 to 100 % is 0.02 % of density, at 30 °C it is 4 % of
 * the dry air, so an answer that used it says so. Middle of what nights at tracks show: common practice, no source.
 */
export const ASSUMED_RELATIVE_HUMIDITY = 0.8;

/** Air as it may be sent: a temperature, one pressure by its kind, one humidity or none. */
export type AirJson = Pick<
  AirStateJson,
  | 'temperatureC'
  | 'pressureHpa'
  | 'altimeterHpa'
  | 'seaLevelHpa'
  | 'elevationM'
  | 'relativeHumidity'
  | 'dewPointC'
> & { readonly frostPointC?: number | undefined };

export function airFromJson(json: AirJson, path: Path = []): Result<Air, readonly ContractProblem[]> {
  const pressure = pressureFromJson(json);
  if (pressure === null)
    return fail([
      {
        path: [...path, 'pressureHpa'],
        reason: { code: 'field', message: 'is missing, and so is elevationM' },
      },
    ]);
  const given: AirGiven = {
    temperature: celsiusToKelvin(json.temperatureC),
    pressure,
    humidity: humidityFromJson(json),
  };
  const air = airFrom(given);
  if (air.ok) return air;
  return fail([{ path: [...path, fieldOf(air.reason, given)], reason: air.reason }]);
}

/** True where the air's humidity had to be assumed. */
export function lacksHumidity(json: AirJson): boolean {
  return (
    json.relativeHumidity === undefined && json.dewPointC === undefined && json.frostPointC === undefined
  );
}

/** The station pressure keeps the elevation beside it, so that a sea-level number typed in its place is caught. */
function pressureFromJson(json: AirJson): PressureGiven | null {
  const said = pressureSaid(json);
  if (json.elevationM !== undefined)
    return pressureGiven(said ?? { kind: 'standard' }, metre(json.elevationM));
  return said?.kind === 'station' ? { kind: 'station', value: hectopascalToPascal(said.hpa) } : null;
}

function humidityFromJson(json: AirJson): Humidity {
  if (json.dewPointC !== undefined) return { kind: 'dew-point', value: celsiusToKelvin(json.dewPointC) };
  if (json.frostPointC !== undefined)
    return { kind: 'frost-point', value: celsiusToKelvin(json.frostPointC) };
  return { kind: 'relative', value: ratio(json.relativeHumidity ?? ASSUMED_RELATIVE_HUMIDITY) };
}

const HUMIDITY_FIELDS = {
  relative: 'relativeHumidity',
  'dew-point': 'dewPointC',
  'frost-point': 'frostPointC',
} as const;

/** The sent field a problem of the air is about. */
function fieldOf(problem: AirProblem, given: AirGiven): string {
  switch (problem.code) {
    case 'temperature-out-of-range':
      return 'temperatureC';
    case 'pressure-out-of-range':
    case 'sea-level-number-as-station':
    case 'pressure-too-low-for-elevation':
      return pressureField(given.pressure.kind);
    case 'elevation-out-of-range':
      return 'elevationM';
    case 'humidity-out-of-range':
    case 'dew-point-above-temperature':
      return HUMIDITY_FIELDS[given.humidity.kind];
  }
}
