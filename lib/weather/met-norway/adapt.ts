import type { Sky } from '@/lib/hours/series';
import { fail, ok, type Result } from '@/lib/result/result';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { type KelvinDifference, kelvinDifference, metre, ratio, speedMs } from '@/lib/units/quantity';
import type { AnswerProblem } from '@/lib/weather/problem';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import type { MetNorwayDetails, MetNorwayForecast } from './schema';

/** What each field must be in; the service's own page once spelled celsius with two c. */
const UNITS = {
  air_temperature: ['celsius', 'celcius'],
  dew_point_temperature: ['celsius', 'celcius'],
  relative_humidity: ['%'],
  air_pressure_at_sea_level: ['hPa'],
} as const;

/**
 * MET Norway's rows as hours: hourly for two to three days, then every six. There is no station pressure; `altitude`
 * moves the temperature and nothing else.
 */
export function adaptMetNorway(wire: MetNorwayForecast): Result<ServiceAnswer, AnswerProblem> {
  const { meta, timeseries } = wire.properties;
  for (const [field, allowed] of Object.entries(UNITS)) {
    const unit = meta.units[field];
    if (unit !== undefined && !allowed.some((name) => name === unit))
      return fail({ code: 'wrong-units', field, unit });
  }
  const hours: ServiceHour[] = [];
  for (const [index, { time, data }] of timeseries.entries()) {
    const at = readInstant(time);
    const last = hours.at(-1);
    if (!at.ok || (last !== undefined && at.value <= last.at))
      return fail({ code: 'unexpected-shape', field: `properties.timeseries.${index}.time` });
    hours.push({ at: at.value, ...values(data.instant.details, meta.units) });
  }
  const issued = readInstant(meta.updated_at);
  const [longitude, latitude, altitude] = wire.geometry.coordinates;
  return ok({
    hours,
    elevation: metre(altitude),
    issuedAt: issued.ok ? issued.value : null,
    place: { latitude, longitude },
    conflicting: [],
  });
}

type Units = MetNorwayForecast['properties']['meta']['units'];

function values(details: MetNorwayDetails, units: Units): Omit<ServiceHour, 'at'> {
  const convert = <Q>(value: number | null | undefined, to: (value: number) => Q): Q | null =>
    value === null || value === undefined ? null : to(value);
  return {
    temperature: convert(details.air_temperature, celsiusToKelvin),
    relativeHumidity: convert(details.relative_humidity, (percent) => ratio(percent / 100)),
    dewPoint: convert(details.dew_point_temperature, celsiusToKelvin),
    stationPressure: null,
    seaLevelPressure: convert(details.air_pressure_at_sea_level, hectopascalToPascal),
    spread: spreadOf(details),
    sky: skyOf(details, units),
  };
}

/** The sky, where it comes in the units that are known; there is no snow on the ground in this answer. */
function skyOf({ cloud_area_fraction: cloud, wind_speed: wind }: MetNorwayDetails, units: Units): Sky {
  const hasCloud = units.cloud_area_fraction === '%' && cloud !== null && cloud !== undefined;
  const hasWind = units.wind_speed === 'm/s' && wind !== null && wind !== undefined;
  return {
    cloudCover: hasCloud && cloud >= 0 && cloud <= 100 ? ratio(cloud / 100) : null,
    wind: hasWind && wind >= 0 ? speedMs(wind) : null,
    snowDepth: null,
    daylight: null,
  };
}

/** Standard normal deviate with 10 % above it, to five digits. */
const NORMAL_90 = 1.28155;

/** Standard deviation of a normal distribution with these percentiles: (p90 - p10) / (2 z90). Not given everywhere. */
function spreadOf(details: MetNorwayDetails): KelvinDifference | null {
  const { air_temperature_percentile_10: low, air_temperature_percentile_90: high } = details;
  if (low === null || low === undefined || high === null || high === undefined || high < low) return null;
  return kelvinDifference((high - low) / (2 * NORMAL_90));
}
