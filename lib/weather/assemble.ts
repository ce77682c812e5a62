import { fillListed } from '@/lib/hours/gaps';
import { type Instant, instant } from '@/lib/time/instant';
import type { Copy } from './copy';
import type { Forecast, ForecastHour } from './forecast';
import type { TemperatureSpread } from './open-meteo/spread';
import type { Site } from './place';
import { lentPressure } from './pressure-loan';
import type { SourceTry } from './problem';
import type { Source } from './source';

export type Parts = {
  readonly site: Site;
  readonly copy: Copy;
  /** All services, for names and credits. */
  readonly sources: readonly Source[];
  /** Whose pressure stands in where the copy has none. */
  readonly lender: Copy | null;
  readonly spread: TemperatureSpread | null;
  readonly freshness: Forecast['freshness'];
  readonly freshUntil: Instant;
  readonly tries: readonly SourceTry[];
};

/** Puts a forecast together from one service's hours, with every borrowed or filled number marked. */
export function assembleForecast(parts: Parts): Forecast {
  const { copy, site, sources } = parts;
  const rawModel = sources.find((source) => source.name === copy.by)?.isRawModel(site) ?? true;
  const told = copy.hours.map((hour): ForecastHour => {
    const pressure =
      hour.pressure === null
        ? lentPressure(hour.at, copy.elevation, parts.lender)
        : { pressure: hour.pressure, pressureFrom: hour.pressureFrom, pressureBy: copy.by };
    const spread = hour.spread ?? parts.spread?.get(hour.at) ?? null;
    return { ...hour, ...pressure, spread, origin: 'forecast', rawModel, temperatureBy: copy.by };
  });
  const { hours, missing } = fillListed(told, copy.missing);
  return {
    hours,
    missing,
    leftOut: copy.leftOut,
    elevation: copy.elevation,
    elevationFrom: copy.elevationFrom,
    place: { latitude: site.latitude, longitude: site.longitude },
    by: copy.by,
    source: seriesSource(parts, hours),
    freshness: parts.freshness,
    freshUntil: instant(parts.freshUntil),
    tries: parts.tries,
  };
}

function seriesSource({ copy, sources, lender }: Parts, hours: readonly ForecastHour[]): Forecast['source'] {
  const own = sources.find((source) => source.name === copy.by);
  const lent = hours.some((hour) => hour.pressureBy === lender?.by && hour.pressureBy !== copy.by);
  const credit = lent ? sources.find((source) => source.name === lender?.by)?.attribution : undefined;
  return {
    name: own?.label ?? copy.by,
    attribution: [own?.attribution ?? '', ...(credit === undefined ? [] : [`pressure: ${credit}`])].join(
      '; ',
    ),
    attributionUrl: own?.attributionUrl ?? null,
    issuedAt: copy.issuedAt,
    fetchedAt: copy.fetchedAt,
    modelElevation: copy.modelElevation,
  };
}
