import * as z from 'zod';
import type { Place } from './place';

const placeFoundSchema = z.strictObject({
  name: z.string(),
  region: z.string().describe('County, state, country.'),
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
  elevationM: z
    .number()
    .nullable()
    .describe('Of the place found, which may lie higher or lower than the track.'),
  timezone: z.string().nullable(),
});

export const placesJsonSchema = z
  .strictObject({
    places: z.array(placeFoundSchema),
    attribution: z.string(),
    attributionUrl: z.string(),
  })
  .meta({ id: 'Places' });

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
