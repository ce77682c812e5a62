import type { ForecastJson } from '@/lib/contract/forecast';
import { skyToJson } from '@/lib/contract/sky';
import type { Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { withoutDust } from '@/lib/units/entry-text';
import type { Forecast } from './forecast';
import type { SourceTry } from './problem';

/** A forecast as our own API answers it. `forecastSeries` in lib/contract reads its hours back. */
export function forecastToJson(forecast: Forecast): ForecastJson {
  const { source } = forecast;
  return {
    ...forecast.place,
    elevationM: forecast.elevation,
    elevationFrom: forecast.elevationFrom,
    modelElevationM: source.modelElevation,
    by: forecast.by,
    name: source.name,
    attribution: source.attribution,
    attributionUrl: source.attributionUrl,
    issuedAt: isoOrNull(source.issuedAt),
    fetchedAt: isoOrNull(source.fetchedAt),
    freshness: forecast.freshness,
    freshUntil: isoUtc(forecast.freshUntil),
    tries: forecast.tries.map(tryToJson),
    missing: forecast.missing.map(isoUtc),
    leftOut: forecast.leftOut.map(({ at, code }) => ({ time: isoUtc(at), code })),
    hours: forecast.hours.map((hour) => ({
      time: isoUtc(hour.at),
      temperatureC: withoutDust(kelvinToCelsius(hour.temperature)),
      pressureHpa: withoutDust(pascalToHectopascal(hour.pressure)),
      pressureFrom: hour.pressureFrom,
      relativeHumidity: withoutDust(hour.relativeHumidity),
      spreadK: hour.spread === null ? null : withoutDust(hour.spread),
      origin: hour.origin,
      temperatureBy: hour.temperatureBy,
      pressureBy: hour.pressureBy,
      ...skyToJson(hour),
    })),
  };
}

const isoOrNull = (at: Instant | null): string | null => (at === null ? null : isoUtc(at));

function tryToJson({ source, problem }: SourceTry): ForecastJson['tries'][number] {
  if ('until' in problem) return { source, problem: { code: problem.code, until: isoUtc(problem.until) } };
  return { source, problem };
}
