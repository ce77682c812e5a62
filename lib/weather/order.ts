import { MET_NORWAY } from './met-norway/request';
import { OPEN_METEO } from './open-meteo/request';
import type { Coordinates } from './place';
import type { Source } from './source';
import { WEATHER_GOV } from './weather-gov/request';

/**
 * MET Norway's own 2.5 km model, corrected hourly for cold pools and inversions, covers the Nordic countries and
 * Svalbard; elsewhere it hands on a global model. The box is drawn by hand: Denmark to Svalbard, Norway's coast to
 * Finland's border.
 */
const NORDIC = { south: 54.5, north: 82, west: 4, east: 32 } as const;

/** The services that cover a place, in the order in which they are asked. */
export function sourcesFor(place: Coordinates): readonly Source[] {
  const nordic =
    place.latitude >= NORDIC.south &&
    place.latitude <= NORDIC.north &&
    place.longitude >= NORDIC.west &&
    place.longitude <= NORDIC.east;
  const sources = nordic ? [MET_NORWAY, OPEN_METEO, WEATHER_GOV] : [OPEN_METEO, MET_NORWAY, WEATHER_GOV];
  return sources.filter((source) => source.covers(place));
}
