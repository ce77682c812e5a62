import type { Coordinates } from '@/lib/weather/place';

type Box = { readonly south: number; readonly north: number; readonly west: number; readonly east: number };

/** Where the US service forecasts, roughly; it answers 404 for the rest of these boxes. Drawn by hand, a degree wide. */
const BOXES: readonly Box[] = [
  { south: 24, north: 50, west: -125.5, east: -66 },
  // Alaska, on both sides of the 180th meridian.
  { south: 51, north: 72, west: -180, east: -129.5 },
  { south: 51, north: 54, west: 172, east: 180 },
  // Hawaii; Puerto Rico and the Virgin Islands; Guam and the Northern Marianas; American Samoa.
  { south: 18, north: 23, west: -161, east: -154 },
  { south: 17, north: 19, west: -68, east: -64 },
  { south: 13, north: 21, west: 144, east: 146.5 },
  { south: -15, north: -10, west: -172, east: -168 },
];

function isInside(box: Box, { latitude, longitude }: Coordinates): boolean {
  return latitude >= box.south && latitude <= box.north && longitude >= box.west && longitude <= box.east;
}

export function coversUnitedStates(place: Coordinates): boolean {
  return BOXES.some((box) => isInside(box, place));
}
