import { saturationOverWater } from '@/lib/air/saturation';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { distanceM } from '@/lib/weather/distance';
import { readMetar } from '@/lib/weather/metar/read-metar';
import {
  OBSERVATION_AHEAD_MS,
  OLDEST_OBSERVATION_MS,
  type PlacedObservation,
} from '@/lib/weather/stations/observation';
import type { ObservationDoubt } from '@/lib/weather/stations/station-problem';
import type { Station, ToldObservation } from '@/lib/weather/weather-gov/adapt-observation';

// Wide enough for any good station; all are judgement.

/** A station's coordinates are rounded to a hundredth of a degree in observations, a kilometre [m]. */
const SAME_STATION_M = 5_000;
/** Its height is told twice, in rounded metres or feet [m]. */
const SAME_HEIGHT_M = 30;
/** Humidity made from whole degrees, or told in whole percents [1]. */
const HUMIDITY = 0.12;
/** Altimeter setting and sea-level pressure differ by the temperature of the column: 0.5 hPa and 1.5 in 100 m [Pa]. */
const PRESSURE = { least: 300, perMetre: 1.5 } as const;
/** The report has whole degrees, or tenths [K]; whole hectopascals or hundredths of an inch [Pa]. */
const REPORT = { temperature: 1.1, altimeter: 150 } as const;

/** Holds an observation against its station, the clock, itself and the report it was made from. */
export function checkObservation(
  told: ToldObservation,
  { station, now }: { readonly station: Station; readonly now: Instant },
): Result<PlacedObservation, { readonly code: ObservationDoubt }> {
  const doubt = placeDoubt(told, station) ?? timeDoubt(told, now) ?? reportDoubt(told, now) ?? airDoubt(told);
  if (doubt !== null) return fail({ code: doubt });
  const { temperature, relativeHumidity: _, seaLevel: __, report: ___, ...observation } = told;
  return temperature === null ? fail({ code: 'no-temperature' }) : ok({ ...observation, temperature });
}

function placeDoubt(told: ToldObservation, station: Station): ObservationDoubt | null {
  if (told.station !== station.id) return 'other-place';
  if (!(distanceM(told.place, station.place) <= SAME_STATION_M)) return 'other-place';
  return Math.abs(told.elevation - station.elevation) <= SAME_HEIGHT_M ? null : 'other-height';
}

function timeDoubt({ at }: ToldObservation, now: Instant): ObservationDoubt | null {
  if (now - at > OLDEST_OBSERVATION_MS) return 'too-old';
  return at - now > OBSERVATION_AHEAD_MS ? 'not-yet' : null;
}

/** Where a report comes along that can be read, it has to say the same. */
function reportDoubt(told: ToldObservation, now: Instant): ObservationDoubt | null {
  const read = readMetar(told.report, now);
  if (!read.ok) return null;
  const { station, temperature, altimeter } = read.value;
  const differ = (a: number | null, b: number | null, most: number) =>
    a !== null && b !== null && Math.abs(a - b) > most;
  return station !== told.station ||
    differ(temperature, told.temperature, REPORT.temperature) ||
    differ(altimeter, told.altimeter, REPORT.altimeter)
    ? 'report-disagrees'
    : null;
}

function airDoubt(told: ToldObservation): ObservationDoubt | null {
  const { temperature, dewPoint, relativeHumidity, altimeter, seaLevel, elevation } = told;
  if (temperature !== null && dewPoint !== null) {
    const humidity = saturationOverWater(dewPoint) / saturationOverWater(temperature);
    if (humidity > 1 + HUMIDITY) return 'humidity-disagrees';
    if (relativeHumidity !== null && Math.abs(humidity - relativeHumidity) > HUMIDITY)
      return 'humidity-disagrees';
  }
  if (altimeter === null || seaLevel === null) return null;
  const most = PRESSURE.least + PRESSURE.perMetre * Math.max(0, elevation);
  return Math.abs(altimeter - seaLevel) > most ? 'pressure-disagrees' : null;
}
