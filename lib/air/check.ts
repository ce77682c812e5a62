import type { Kelvin, Ratio } from '@/lib/units/quantity';
import type { AirGiven, AirProblem, Humidity, PressureGiven } from './air';
import { relativeHumidityOf } from './humidity';
import { stationPressure } from './pressure';
import { RANGE, within } from './ranges';
import { dewPointOf, saturationOverIce, saturationOverWater } from './saturation';
import { impliedSeaLevel, RECORD_WEATHER } from './sea-level-weather';
import { standardPressure } from './standard-atmosphere';

/** Temperature and dew point are each read to a tenth, so a dew point may seem this much above saturation [K]. */
const DEW_POINT_SLACK_K = 0.1;

/** Beyond any weather on record; what is merely odd is asked about (`pressure-doubt.ts`), not refused. */
function stationProblem(
  given: Extract<PressureGiven, { kind: 'station' }>,
  temperature: Kelvin,
  relativeHumidity: Ratio,
): AirProblem | null {
  const { value: pressure, elevation } = given;
  if (elevation === undefined) return null;
  const { lowest, highest } = impliedSeaLevel(pressure, { elevation, temperature, relativeHumidity });
  if (lowest > RECORD_WEATHER.highest) {
    const stationIfSeaLevel = stationPressure(
      { kind: 'sea-level', value: pressure, elevation },
      temperature,
      relativeHumidity,
    );
    return { code: 'sea-level-number-as-station', pressure, elevation, stationIfSeaLevel };
  }
  if (highest < RECORD_WEATHER.lowest)
    return {
      code: 'pressure-too-low-for-elevation',
      pressure,
      elevation,
      standard: standardPressure(elevation),
    };
  return null;
}

function pressureProblem(given: PressureGiven): AirProblem | null {
  const { kind, elevation } = given;
  if (elevation !== undefined && !within(elevation, RANGE.elevation))
    return { code: 'elevation-out-of-range', elevation };
  if (kind === 'standard') return null;
  const range = kind === 'station' ? RANGE.station : RANGE.seaLevel;
  return within(given.value, range) ? null : { code: 'pressure-out-of-range', pressure: given.value, kind };
}

const HUMIDITY_RANGE = {
  relative: { lowest: 0, highest: 1 },
  'dew-point': RANGE.dewPoint,
  'frost-point': RANGE.frostPoint,
} as const;

/**
 * A dew point above the temperature is refused. A frost point may lie above it: air saturated over supercooled
 * water at -10 °C has a frost point of -8.9 °C.
 */
function humidityProblem(humidity: Humidity, temperature: Kelvin): AirProblem | null {
  const { kind, value } = humidity;
  if (!within(value, HUMIDITY_RANGE[kind])) return { code: 'humidity-out-of-range', value, kind };
  if (kind === 'relative' || relativeHumidityOf(humidity, temperature) <= 1) return null;
  const vapourPressure = kind === 'dew-point' ? saturationOverWater(value) : saturationOverIce(value);
  const dewPoint = dewPointOf(vapourPressure) ?? temperature;
  if (dewPoint <= temperature + DEW_POINT_SLACK_K) return null;
  return { code: 'dew-point-above-temperature', dewPoint, temperature };
}

/** The first thing that keeps given numbers from being air; null where they are. */
export function airProblem({ temperature, pressure, humidity }: AirGiven): AirProblem | null {
  if (!within(temperature, RANGE.temperature)) return { code: 'temperature-out-of-range', temperature };
  const problem = pressureProblem(pressure) ?? humidityProblem(humidity, temperature);
  if (problem !== null) return problem;
  if (pressure.kind !== 'station') return null;
  return stationProblem(pressure, temperature, relativeHumidityOf(humidity, temperature));
}
