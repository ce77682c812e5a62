import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import type { Place } from './place';

const placeFoundSchema = z.strictObject({
  name: z.string(),
  region: z.string().check(about('County, state, country.')),
  latitude: z.number().check(z.minimum(-90), z.maximum(90)),
  longitude: z.number().check(z.minimum(-180), z.maximum(180)),
  elevationM: z
    .nullable(z.number())
    .check(about('Of the place found, which may lie higher or lower than the track.')),
  timezone: z.nullable(z.string()),
});

export const placesJsonSchema = z
  .strictObject({
    places: z.array(placeFoundSchema),
    attribution: z.string(),
    attributionUrl: z.string(),
  })
  .register(z.globalRegistry, { id: 'Places' });

export type PlacesJson = z.output<typeof placesJsonSchema>;

/** Names and heights of towns come from GeoNames, the height of a point from the Copernicus model. */
const PLACES_CREDIT = {
  attribution: 'Places: GeoNames (CC BY 4.0), by Open-Meteo.com; height of a point: Copernicus GLO-90',
  attributionUrl: 'https://www.geonames.org/',
} as const;

export function placesToJson(places: readonly Place[]): PlacesJson {
  return {
    places: places.map(({ elevation, zone, ...place }) => ({
      ...place,
      elevationM: elevation,
      timezone: zone,
    })),
    ...PLACES_CREDIT,
  };
}
