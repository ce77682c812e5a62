import type { Coordinates } from '@/lib/weather/place';

/**
 * MET Norway's own 2.5 km model, corrected hourly for cold pools and inversions, covers the Nordic countries and
 * Svalbard; elsewhere it hands on a global model. The box is drawn by hand: Denmark to Svalbard, Norway's coast to
 * Finland's border.
 */
const NORDIC = { south: 54.5, north: 82, west: 4, east: 32 } as const;

export function isNordic({ latitude, longitude }: Coordinates): boolean {
  return (
    latitude >= NORDIC.south &&
    latitude <= NORDIC.north &&
    longitude >= NORDIC.west &&
    longitude <= NORDIC.east
  );
}
