import type { AirProblem, Humidity, PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { RANGE, within } from '@/lib/air/ranges';
import { type Climb, movePressure, moveTemperature } from '@/lib/hours/elevation-shift';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { type Metre, ratio } from '@/lib/units/quantity';
import type { AnswerProblem } from './problem';
import type { ServiceAnswer, ServiceHour } from './service-hour';
import type { SiteHour } from './site-hour';

export type SiteHours = {
  readonly hours: readonly SiteHour[];
  /** Moments that the service lists without a value. */
  readonly missing: readonly Instant[];
  /** False where the service gives no pressure at all. */
  readonly hasPressure: boolean;
};

/**
 * A service's answer moved to the site: every hour complete, one without a value listed.
 * One number that no weather can have makes the whole answer suspect (wrong units, a sea-level pressure passed off as
 * station pressure), so it is refused and the next service is asked.
 */
export function completeHours(answer: ServiceAnswer, site: Metre): Result<SiteHours, AnswerProblem> {
  const hasPressure = answer.hours.some((h) => h.stationPressure !== null || h.seaLevelPressure !== null);
  const move = { from: answer.elevation, to: site };
  const hours: SiteHour[] = [];
  const missing: Instant[] = [];
  for (const hour of answer.hours) {
    const read = siteHour(hour, move, hasPressure);
    if (!read.ok) return read;
    if (read.value === null) missing.push(hour.at);
    else hours.push(read.value);
  }
  return hours.length === 0 ? fail({ code: 'no-hours' }) : ok({ hours, missing, hasPressure });
}

/** null: the service has no value for something that is needed. */
function siteHour(
  hour: ServiceHour,
  move: Climb,
  hasPressure: boolean,
): Result<SiteHour | null, AnswerProblem> {
  const { at, temperature, spread, stationPressure } = hour;
  if (temperature !== null && !within(temperature, RANGE.temperature))
    return fail({ code: 'implausible', field: 'temperature', value: temperature });
  const humidity = humidityGiven(hour);
  const pressure = hasPressure
    ? pressureGiven(hour, move)
    : ({ kind: 'standard', elevation: move.to } as const);
  if (temperature === null || humidity === null || pressure === null) return ok(null);
  if (stationPressure !== null && isSeaLevelTwice(hour, move.from))
    return fail({ code: 'implausible', field: 'station pressure', value: stationPressure });
  const air = airFrom({ temperature: moveTemperature(temperature, move), humidity, pressure });
  if (!air.ok) return fail(implausible(air.reason));
  return ok({
    at,
    temperature: air.value.temperature,
    relativeHumidity: air.value.relativeHumidity,
    pressure: hasPressure ? air.value.pressure : null,
    pressureFrom: air.value.pressureFrom,
    spread,
    ...(hour.sky === undefined ? {} : { sky: hour.sky }),
  });
}

/** Rounded or slightly supersaturated humidity of a service is saturation, not a fault. */
const MOST_HUMIDITY = 1.05;

function humidityGiven({ relativeHumidity, dewPoint }: ServiceHour): Humidity | null {
  if (relativeHumidity !== null) {
    const value = relativeHumidity <= MOST_HUMIDITY ? ratio(Math.min(1, relativeHumidity)) : relativeHumidity;
    return { kind: 'relative', value };
  }
  return dewPoint === null ? null : { kind: 'dew-point', value: dewPoint };
}

/** Station pressure at the site, or a sea-level pressure to be brought up to it. */
function pressureGiven(hour: ServiceHour, move: Climb): PressureGiven | null {
  const { temperature, stationPressure, seaLevelPressure } = hour;
  if (stationPressure !== null && temperature !== null)
    return {
      kind: 'station',
      value: movePressure({ pressure: stationPressure, temperature }, move),
      elevation: move.to,
    };
  if (seaLevelPressure === null) return null;
  return { kind: 'sea-level', value: seaLevelPressure, elevation: move.to };
}

/** Higher than this a station pressure is below the sea-level pressure by more than rounding [m]. */
const CLEARLY_ABOVE_THE_SEA_M = 20;

/** A service that gives the same number twice has passed off the sea-level pressure as station pressure. */
function isSeaLevelTwice({ stationPressure, seaLevelPressure }: ServiceHour, elevation: Metre): boolean {
  if (stationPressure === null || seaLevelPressure === null) return false;
  return elevation > CLEARLY_ABOVE_THE_SEA_M && stationPressure >= seaLevelPressure;
}

function implausible(problem: AirProblem): AnswerProblem {
  switch (problem.code) {
    case 'temperature-out-of-range':
    case 'dew-point-above-temperature':
      return { code: 'implausible', field: 'temperature', value: problem.temperature };
    case 'elevation-out-of-range':
      return { code: 'implausible', field: 'elevation', value: problem.elevation };
    case 'humidity-out-of-range':
      return { code: 'implausible', field: 'humidity', value: problem.value };
    default:
      return { code: 'implausible', field: 'pressure', value: problem.pressure };
  }
}
