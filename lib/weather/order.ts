import { isNordic } from './met-norway/area';
import { MET_NORWAY } from './met-norway/request';
import { OPEN_METEO } from './open-meteo/request';
import type { Coordinates } from './place';
import type { Source } from './source';
import { WEATHER_GOV } from './weather-gov/request';

/** The services that cover a place, in the order in which they are asked. */
export function sourcesFor(place: Coordinates): readonly Source[] {
  const sources = isNordic(place)
    ? [MET_NORWAY, OPEN_METEO, WEATHER_GOV]
    : [OPEN_METEO, MET_NORWAY, WEATHER_GOV];
  return sources.filter((source) => source.covers(place));
}
