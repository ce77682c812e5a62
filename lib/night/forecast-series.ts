import { instantFromJson } from '@/lib/contract/event-from-json';
import { skyFromJson } from '@/lib/contract/sky';
import type { HourSeries } from '@/lib/hours/series';
import type { ForecastRecord } from '@/lib/store/records';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';

/** A kept forecast in the core's own terms. */
export function forecastSeries({ forecast, fetchedAt }: ForecastRecord): HourSeries {
  const { source } = forecast;
  return {
    elevation: metre(forecast.elevationM),
    source: {
      name: source.name,
      attribution: source.attribution,
      attributionUrl: source.attributionUrl,
      issuedAt: source.issuedAt === null ? null : instantFromJson(source.issuedAt),
      fetchedAt: instantFromJson(source.fetchedAt ?? fetchedAt),
      modelElevation: source.modelElevationM === null ? null : metre(source.modelElevationM),
    },
    hours: forecast.hours.map((hour) => ({
      at: instantFromJson(hour.time),
      temperature: celsiusToKelvin(hour.temperatureC),
      pressure: hectopascalToPascal(hour.stationPressureHpa),
      pressureFrom: hour.pressureFrom,
      relativeHumidity: ratio(hour.relativeHumidity),
      spread: hour.spreadC === null ? null : kelvinDifference(hour.spreadC),
      origin: hour.origin,
      ...skyFromJson(hour),
      ...(hour.temperatureBy === undefined ? {} : { temperatureBy: hour.temperatureBy }),
      ...(hour.pressureBy === undefined ? {} : { pressureBy: hour.pressureBy }),
    })),
  };
}
