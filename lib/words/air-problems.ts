import type { AirProblem, Humidity, PressureKind } from '@/lib/air/air';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatNumber, formatPressure, formatTemperature } from '@/lib/units/format';
import { kelvin, metre, pascal } from '@/lib/units/quantity';

/** Why given numbers are not air, and what to do next. */
export function airProblemSentence(problem: AirProblem, units: UnitChoice): string {
  switch (problem.code) {
    case 'temperature-out-of-range':
      return `${formatTemperature(kelvin(problem.temperature), units)} is outside what air at a track can be. Check the number and its unit.`;
    case 'pressure-out-of-range':
      return `${formatPressure(pascal(problem.pressure), units)} is outside what ${PRESSURES[problem.kind]} can be. Check the number, its unit and its kind.`;
    case 'elevation-out-of-range':
      return `${formatElevation(metre(problem.elevation), units)} is outside the elevations of roads and tracks. Check the number and its unit.`;
    case 'humidity-out-of-range':
      return `${humidityText(problem.value, problem.kind, units)} is outside what air can hold. Check the number and its unit.`;
    case 'dew-point-above-temperature':
      return `A dew point of ${formatTemperature(kelvin(problem.dewPoint), units)} is above the air temperature of ${formatTemperature(kelvin(problem.temperature), units)}, which cannot be. Check whether the two were swapped.`;
    case 'sea-level-number-as-station':
      return seaLevelSentence(problem, units);
    case 'pressure-too-low-for-elevation':
      return `A station pressure of ${formatPressure(pascal(problem.pressure), units)} is too low for ${formatElevation(metre(problem.elevation), units)}: a barometer there shows about ${formatPressure(pascal(problem.standard), units)}. Check the elevation and the pressure.`;
  }
}

/** The classic error: a number from a weather report, reduced to sea level, taken for what a barometer shows up here. */
function seaLevelSentence(
  { pressure, elevation, stationIfSeaLevel }: Extract<AirProblem, { code: 'sea-level-number-as-station' }>,
  units: UnitChoice,
): string {
  const given = formatPressure(pascal(pressure), units);
  const height = formatElevation(metre(elevation), units);
  const real = formatPressure(pascal(stationIfSeaLevel), units);
  return `${given} cannot be the station pressure at ${height}: it looks like a sea-level number from a weather report. A barometer up there shows about ${real}. Enter it as sea-level pressure or altimeter setting, or leave the pressure out.`;
}

const PRESSURES: Readonly<Record<PressureKind, string>> = {
  station: 'a station pressure',
  altimeter: 'an altimeter setting',
  'sea-level': 'a sea-level pressure',
  standard: 'the pressure at this elevation',
};

function humidityText(value: number, kind: Humidity['kind'], units: UnitChoice): string {
  if (kind === 'relative') return `A relative humidity of ${formatNumber(value * 100, 0)} %`;
  const point = kind === 'dew-point' ? 'dew point' : 'frost point';
  return `A ${point} of ${formatTemperature(kelvin(value), units)}`;
}
