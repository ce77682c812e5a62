import { seaLevelFromStation, stationFromSeaLevel } from '@/lib/air/pressure';
import {
  doubtBeside,
  type PressureDoubt,
  pressureDoubt,
  type SaidPressure,
  seaLevelOf,
} from '@/lib/air/pressure-doubt';
import type { Machine } from '@/lib/carb/machine';
import { pressureOriginOf } from '@/lib/hours/provenance';
import type { Hour, HourSeries } from '@/lib/hours/series';
import { type Metre, pascal, ratio } from '@/lib/units/quantity';
import { ANOTHER_PLACE_PRESSURE, READING_KINDS_DIFFER, SAME_AS_REDUCTION } from './judgement';
import type { PlanWarning, Reading } from './types';

/** Hours whose pressure a person gave and has not yet stood by; a service's own are not in doubt. */
const isOpen = (hour: Hour): boolean =>
  pressureOriginOf(hour) === 'typed' && hour.pressureFrom !== 'standard' && hour.pressureConfirmed !== true;

/**
 * What there is to ask about the pressures of a baseline and of the hours: each by itself, then one beside the other.
 * At most one question about each; what a person has stood by is not asked about again.
 */
export function pressureDoubts(machine: Machine, series: HourSeries): readonly PlanWarning[] {
  const { baselineAir, baselinePressure } = machine;
  const open = series.hours.filter(isOpen);
  const inHours = firstDoubt(open, (hour) => pressureDoubt(hour, series.elevation));
  if (baselinePressure === undefined) return inHours;
  if (baselinePressure.elevation === null) return [...inHours, ...withoutElevation(machine, series)];
  const { elevation, confirmed } = baselinePressure;
  const own = confirmed ? null : pressureDoubt(baselineAir, elevation);
  const alone: readonly PlanWarning[] =
    own === null ? inHours : [...inHours, { code: 'baseline-pressure-in-doubt', doubt: own }];
  return alone.length > 0 ? alone : besideEachOther(machine, { elevation, confirmed, series, open });
}

type Beside = {
  readonly elevation: Metre;
  readonly confirmed: boolean;
  readonly series: HourSeries;
  readonly open: readonly Hour[];
};

/** An estimate proves nothing about a number, so a pressure is only held against measured ones. */
function besideEachOther(
  { baselineAir }: Machine,
  { elevation, confirmed, series, open }: Beside,
): readonly PlanWarning[] {
  const measured = series.hours.filter(({ pressureFrom }) => pressureFrom !== 'standard');
  if (baselineAir.pressureFrom === 'standard' || measured.length === 0) return [];
  const proven = seaLevelOf([baselineAir], elevation);
  const inHours = firstDoubt(open, (hour) => doubtBeside(hour, series.elevation, proven));
  if (inHours.length > 0 || confirmed) return inHours;
  const doubt = doubtBeside(baselineAir, elevation, seaLevelOf(measured, series.elevation));
  return doubt === null ? [] : [{ code: 'baseline-pressure-in-doubt', doubt }];
}

function firstDoubt(
  hours: readonly Hour[],
  doubtOf: (hour: Hour) => PressureDoubt | null,
): readonly PlanWarning[] {
  for (const hour of hours) {
    const doubt = doubtOf(hour);
    if (doubt !== null) return [{ code: 'hours-pressure-in-doubt', at: hour.at, doubt }];
  }
  return [];
}

function withoutElevation(
  { baselineAir: { pressure, pressureFrom }, baselinePressure }: Machine,
  { hours }: HourSeries,
): readonly PlanWarning[] {
  if (pressureFrom !== 'station' || baselinePressure?.confirmed === true) return [];
  const tonight = pascal(hours.reduce((sum, hour) => sum + hour.pressure, 0) / hours.length);
  return Math.abs(pressure - tonight) > ANOTHER_PLACE_PRESSURE
    ? [{ code: 'baseline-pressure-without-elevation', pressure, tonight }]
    : [];
}

/** Where no humidity was read: it moves a reduction by less than a tenth of a hPa. */
const USUAL_HUMIDITY = ratio(0.8);

/**
 * What the kind of a barometer's number explains about a reading; null where it explains nothing. Measured hours know
 * the pressure of the moment: what differs from them by just the reduction to sea level is of the other kind, in the
 * reading or in the hours. Beside an estimate the reading is judged by itself.
 *
 * @param difference reading minus hours [Pa]
 */
export function readingDoubt(
  { stationPressure: pressure, temperature, relativeHumidity }: Reading,
  { hours, elevation }: HourSeries,
  difference: number,
): PressureDoubt | null {
  if (pressure === null) return null;
  const humidity = relativeHumidity ?? USUAL_HUMIDITY;
  const said: SaidPressure = {
    pressure,
    pressureFrom: 'station',
    temperature,
    relativeHumidity: humidity,
  };
  if (hours.some(({ pressureFrom }) => pressureFrom === 'standard')) return pressureDoubt(said, elevation);
  const column = { elevation, temperature, relativeHumidity: humidity };
  const seaLevel = seaLevelFromStation(pressure, column);
  // Too high: a sea-level number never reduced. Too low: a station number reduced once too often.
  const reduction = difference > 0 ? pressure - stationFromSeaLevel(pressure, column) : seaLevel - pressure;
  const explains =
    Math.abs(difference) >= READING_KINDS_DIFFER &&
    Math.abs(Math.abs(difference) - reduction) <= SAME_AS_REDUCTION;
  if (!explains) return null;
  return {
    kind: 'station',
    number: pressure,
    elevation,
    seaLevel,
    likely: difference > 0 ? 'sea-level' : null,
    against: seaLevelFromStation(pascal(pressure - difference), column),
  };
}
