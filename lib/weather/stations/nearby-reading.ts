import { stationFromAltimeter } from '@/lib/air/pressure';
import { saturationOverWater } from '@/lib/air/saturation';
import { movePressure, moveTemperature } from '@/lib/hours/elevation-shift';
import { type Kelvin, type Metre, type Pascal, type Ratio, ratio } from '@/lib/units/quantity';
import type { Observation } from './observation';

// How far an observation may be off for another place. All of it is judgement; a reading at the track beats it.

/** The station's own thermometer [K]: a whole degree rounded, and then some. */
const OWN_SD = 0.5;
/** Far away a station tells no more than a forecast: their sd on a cold night [K], from lib/plan/judgement.ts. */
const FAR_SD = 2.5;
/** The way over which a hollow and a field grow apart by 1 - 1/e of that variance [m]. */
const APART_M = 10_000;
/** Between a fall of 6.5 K/km and the inversion of a clear night lie 10 K/km and more [K/m]. */
const SD_PER_METRE = 0.01;
/** An altimeter setting is rounded down to the whole hectopascal [Pa]. */
const PRESSURE_SD = 50;
/** Pressure differs by a hectopascal or so in 100 km of ordinary weather [Pa/m]. */
const PRESSURE_SD_PER_DISTANCE = 100 / 100_000;
/** A column ten degrees colder than thought weighs 4 % more: 0.5 hPa in 100 m [Pa/m]. */
const PRESSURE_SD_PER_METRE = 0.5;
/** Where nobody told how far away the station is, and how far above or below [m]. */
const UNTOLD = { distance: 50_000, climb: 150 } as const;

/** Where a station stands from the site; null where that was not told. */
export type FromSite = { readonly distance: Metre | null; readonly elevation: Metre | null };

/** An observation as a reading at the site, and how far it may be off there. */
export type NearbyReading = {
  readonly temperature: Kelvin;
  readonly stationPressure: Pascal | null;
  readonly relativeHumidity: Ratio | null;
  readonly sd: { readonly temperature: number; readonly pressure: number };
};

/**
 * Moves an observation to the site: temperature by 6.5 K/km, pressure from the altimeter setting to the station's and
 * through the air there to the site's. Humidity is kept: it hardly counts for density.
 */
export function nearbyReading(observation: Observation, station: FromSite, site: Metre): NearbyReading {
  const { temperature, dewPoint } = observation;
  const climb = { from: station.elevation ?? site, to: site };
  return {
    temperature: moveTemperature(temperature, climb),
    stationPressure: pressureAt(observation, climb),
    relativeHumidity:
      dewPoint === null
        ? null
        : ratio(Math.min(1, saturationOverWater(dewPoint) / saturationOverWater(temperature))),
    sd: sdOf(station, site),
  };
}

function pressureAt(
  { altimeter, temperature }: Observation,
  climb: { readonly from: Metre; readonly to: Metre },
): Pascal | null {
  if (altimeter === null) return null;
  const pressure = stationFromAltimeter(altimeter, climb.from);
  return movePressure({ pressure, temperature }, climb);
}

function sdOf({ distance, elevation }: FromSite, site: Metre): NearbyReading['sd'] {
  const away = distance ?? UNTOLD.distance;
  const climb = elevation === null ? UNTOLD.climb : Math.abs(site - elevation);
  const apart = FAR_SD * Math.sqrt(1 - Math.exp(-away / APART_M));
  return {
    temperature: Math.hypot(OWN_SD, apart, SD_PER_METRE * climb),
    pressure: Math.hypot(PRESSURE_SD, PRESSURE_SD_PER_DISTANCE * away, PRESSURE_SD_PER_METRE * climb),
  };
}
