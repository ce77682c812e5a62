import { hectopascalToPascal } from '@/lib/units/convert';
import type { Pascal } from '@/lib/units/quantity';
import { type AirColumn, altimeterFromStation, seaLevelFromStation } from './pressure';

/** From a lowest to a highest sea-level pressure [Pa]. */
export type SeaLevelRange = { readonly lowest: Pascal; readonly highest: Pascal };

/**
 * What weather does nearly anywhere and nearly always. A pressure inside is never asked about for itself. Judgement:
 * in the middle of continents a few days of a winter lie outside.
 */
export const USUAL_WEATHER: SeaLevelRange = {
  lowest: hectopascalToPascal(985),
  highest: hectopascalToPascal(1040),
};

/**
 * A pressure outside is asked about even where no other kind would explain it. Just inside what aviation takes for
 * abnormal, below 28.00 inHg (948 hPa) and above 31.00 inHg (1050 hPa): FAA, Aeronautical Information Manual, 7-2-2.
 * The deepest storm over the middle of North America had 955.2 hPa (National Weather Service Duluth, 26 October 2010).
 */
export const OPEN_WEATHER: SeaLevelRange = {
  lowest: hectopascalToPascal(970),
  highest: hectopascalToPascal(1045),
};

/**
 * Beyond this no station pressure is taken, neither reduction leaving it on record. The highest: 1083.8 hPa at Agata (261 m, 31 December
 * 1968; World Meteorological Organization, archive of extremes, below 750 m), reduced through air of about -50 °C, is
 * an altimeter setting of 1074.0 hPa; 1089.1 hPa at Tosontsengel (846.5 hPa, 1725.8 m, -44.8 °C; the same, above 750 m)
 * is one of 1041.8 hPa. The lowest outside the tropics: about 914 hPa in the North Atlantic, January 1993, from memory.
 */
export const RECORD_WEATHER: SeaLevelRange = {
  lowest: hectopascalToPascal(913),
  highest: hectopascalToPascal(1074.5),
};

/**
 * The sea-level pressure that a station pressure stands for, as the two usual reductions have it: through the standard
 * atmosphere and through the air of the hour. In a cold night over high ground they are 50 hPa apart and neither is
 * wrong, so the truth is taken to lie between.
 */
export function impliedSeaLevel(station: Pascal, column: AirColumn): SeaLevelRange {
  const altimeter = altimeterFromStation(station, column.elevation);
  const seaLevel = seaLevelFromStation(station, column);
  return altimeter < seaLevel
    ? { lowest: altimeter, highest: seaLevel }
    : { lowest: seaLevel, highest: altimeter };
}
