import type { Hour, HourSeries } from '@/lib/hours/series';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';
import { instantFromJson } from './event-from-json';
import type { KeptForecastJson } from './forecast';
import { skyFromJson } from './sky';

/** The hours of a forecast, answered or kept, in the core's own terms. */
export function forecastSeries(json: KeptForecastJson): HourSeries {
  return {
    elevation: metre(json.elevationM),
    source: {
      name: json.name,
      attribution: json.attribution,
      attributionUrl: json.attributionUrl,
      issuedAt: json.issuedAt === null ? null : instantFromJson(json.issuedAt),
      fetchedAt: json.fetchedAt === null ? null : instantFromJson(json.fetchedAt),
      modelElevation: json.modelElevationM === null ? null : metre(json.modelElevationM),
    },
    hours: json.hours.map(hourFromJson),
  };
}

function hourFromJson(json: KeptForecastJson['hours'][number]): Hour {
  return {
    at: instantFromJson(json.time),
    temperature: celsiusToKelvin(json.temperatureC),
    pressure: hectopascalToPascal(json.pressureHpa),
    pressureFrom: json.pressureFrom,
    relativeHumidity: ratio(json.relativeHumidity),
    spread: json.spreadK === null ? null : kelvinDifference(json.spreadK),
    origin: json.origin,
    ...(json.temperatureBy === undefined ? {} : { temperatureBy: json.temperatureBy }),
    ...(json.pressureBy === undefined ? {} : { pressureBy: json.pressureBy }),
    ...skyFromJson(json),
  };
}
