import type { Sky } from '@/lib/hours/series';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin } from '@/lib/units/convert';
import { metre, ratio, speedMs } from '@/lib/units/quantity';
import type { Coordinates } from '@/lib/weather/place';
import type { AnswerProblem } from '@/lib/weather/problem';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import { readInterval } from './interval';
import type { WeatherGovGrid, WeatherGovLayer } from './schema';

/** The grid is read hour by hour. */
const STEP_MS = HOUR_MS;

/** The grid reaches eight days; a month would be nonsense [ms]. */
const LONGEST_GRID_MS = 30 * 24 * HOUR_MS;

/** A layer's values by full hour; null where the service says null. */
type HourlyValues = ReadonlyMap<number, number | null>;

/**
 * The grid's layers, spread over the full hours they cover. Layers begin and end at different times. There is no
 * pressure: the `pressure` layer is empty in practice, and where an office fills it, it names no unit.
 */
export function adaptWeatherGov(wire: WeatherGovGrid): Result<ServiceAnswer, AnswerProblem> {
  const { temperature, dewpoint, relativeHumidity, elevation, updateTime } = wire.properties;
  if (elevation.unitCode !== 'wmoUnit:m')
    return fail({ code: 'wrong-units', field: 'elevation', unit: elevation.unitCode });
  const conflicting = new Set<Instant>();
  const temperatures = hourly('temperature', temperature, { unit: 'wmoUnit:degC', conflicting });
  if (!temperatures.ok) return temperatures;
  const dewPoints = hourly('dewpoint', dewpoint, { unit: 'wmoUnit:degC', conflicting });
  if (!dewPoints.ok) return dewPoints;
  const humidities = hourly('relativeHumidity', relativeHumidity, { unit: 'wmoUnit:percent', conflicting });
  if (!humidities.ok) return humidities;
  const covered = [...temperatures.value.keys()];
  if (covered.length === 0) return fail({ code: 'no-hours' });
  const [first, last] = [covered.reduce((a, b) => Math.min(a, b)), covered.reduce((a, b) => Math.max(a, b))];
  if (last - first > LONGEST_GRID_MS)
    return fail({ code: 'unexpected-shape', field: 'properties.temperature.validTime' });
  const sky = skyAt(wire);
  const hours: ServiceHour[] = [];
  for (let at = first; at <= last; at += STEP_MS) {
    const celsius = temperatures.value.get(at) ?? null;
    const dewPoint = dewPoints.value.get(at) ?? null;
    const percent = humidities.value.get(at) ?? null;
    hours.push({
      at: instant(at),
      temperature: celsius === null ? null : celsiusToKelvin(celsius),
      dewPoint: dewPoint === null ? null : celsiusToKelvin(dewPoint),
      relativeHumidity: percent === null ? null : ratio(percent / 100),
      stationPressure: null,
      seaLevelPressure: null,
      spread: null,
      sky: sky(at),
    });
  }
  const issued = readInstant(updateTime);
  return ok({
    hours,
    elevation: metre(elevation.value),
    issuedAt: issued.ok ? issued.value : null,
    place: middleOf(wire),
    conflicting: [...conflicting],
  });
}

function hourly(
  field: string,
  layer: WeatherGovLayer | undefined,
  { unit, conflicting }: { readonly unit: string; readonly conflicting: Set<Instant> },
): Result<HourlyValues, AnswerProblem> {
  const values = new Map<number, number | null>();
  if (layer === undefined || layer.values.length === 0) return ok(values);
  if (layer.uom !== unit) return fail({ code: 'wrong-units', field, unit: layer.uom ?? '' });
  for (const { validTime, value } of layer.values) {
    const interval = readInterval(validTime);
    if (interval === null) return fail({ code: 'unexpected-shape', field: `properties.${field}.validTime` });
    for (let at = fullHour(interval.start); at < interval.end; at += STEP_MS) {
      // Intervals are meant to follow each other. Where they overlap, neither is better than the other.
      if (values.has(at) && values.get(at) !== value) conflicting.add(instant(at));
      values.set(at, value);
    }
  }
  return ok(values);
}

/** Metres per second in a kilometre per hour. */
const KMH = 1 / 3.6;

/** The sky hour by hour, where its layers can be read; there is no snow on the ground in this answer. */
function skyAt({ properties }: WeatherGovGrid): (at: number) => Sky {
  // Where two intervals of a sky disagree it is a little less sure, and nothing else hangs on it.
  const conflicting = new Set<Instant>();
  const clouds = hourly('skyCover', properties.skyCover, { unit: 'wmoUnit:percent', conflicting });
  const winds = hourly('windSpeed', properties.windSpeed, { unit: 'wmoUnit:km_h-1', conflicting });
  return (at) => {
    const cloud = clouds.ok ? (clouds.value.get(at) ?? null) : null;
    const wind = winds.ok ? (winds.value.get(at) ?? null) : null;
    return {
      cloudCover: cloud === null || cloud < 0 || cloud > 100 ? null : ratio(cloud / 100),
      wind: wind === null || wind < 0 ? null : speedMs(wind * KMH),
      snowDepth: null,
      daylight: null,
    };
  };
}

/** The mean of the cell's corners; null where they are not told. */
function middleOf({ geometry }: WeatherGovGrid): Coordinates | null {
  // A ring ends with its first corner once more.
  const corners = geometry?.coordinates[0]?.slice(1) ?? [];
  if (corners.length === 0) return null;
  const mean = (of: 0 | 1): number => corners.reduce((sum, corner) => sum + corner[of], 0) / corners.length;
  return { latitude: mean(1), longitude: mean(0) };
}

/** The first full hour at or after. */
function fullHour(at: Instant): number {
  return Math.ceil(at / HOUR_MS) * HOUR_MS;
}
