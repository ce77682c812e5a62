/** Weather that never was, the same for the same seed: smooth in time and place, cold at night, colder uphill. */
export type Weather = {
  readonly temperatureC: number;
  readonly relativeHumidityPercent: number;
  readonly dewPointC: number;
  readonly seaLevelHpa: number;
  readonly stationHpa: number;
  readonly cloudPercent: number;
  readonly windMs: number;
  readonly snowM: number;
  readonly isDay: boolean;
};

export type Spot = { readonly latitude: number; readonly longitude: number; readonly elevationM: number };

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** A number from 0 to 1 that depends on the seed and a label alone (FNV-1a). */
function chance(seed: number, label: string): number {
  let hash = 2166136261 ^ seed;
  for (const char of label) hash = Math.imul(hash ^ char.charCodeAt(0), 16777619);
  return ((hash ^ (hash >>> 15)) >>> 0) / 2 ** 32;
}

type Wave = { readonly name: string; readonly size: number; readonly periodMs: number };

const WARMTH: readonly Wave[] = [
  { name: 'warm front', size: 3.2, periodMs: 4.3 * DAY },
  { name: 'air mass', size: 2.4, periodMs: 8.9 * DAY },
  { name: 'cloud', size: 0.6, periodMs: 0.31 * DAY },
];
const PRESSURE: readonly Wave[] = [
  { name: 'low', size: 8, periodMs: 4.9 * DAY },
  { name: 'high', size: 5, periodMs: 9.7 * DAY },
];

const CLOUDS: readonly Wave[] = [{ name: 'deck', size: 60, periodMs: 1.7 * DAY }];
const WINDS: readonly Wave[] = [{ name: 'gale', size: 4, periodMs: 2.3 * DAY }];

function waves(seed: number, all: readonly Wave[], at: number, spot: Spot): number {
  return all.reduce((sum, { name, size, periodMs }) => {
    const phase = chance(seed, name) + (spot.longitude + spot.latitude / 2) / 40;
    return sum + size * Math.sin(2 * Math.PI * (at / periodMs + phase));
  }, 0);
}

export function weatherAt(seed: number, at: number, spot: Spot): Weather {
  const { latitude, longitude, elevationM } = spot;
  const yearShare = (at / (365.2425 * DAY)) % 1;
  const summer = Math.cos(2 * Math.PI * (yearShare - 0.54)) * Math.sign(latitude || 1);
  const solarHour = (at / HOUR + longitude / 15) % 24;
  const day = Math.cos((2 * Math.PI * (solarHour - 15)) / 24);
  const seaLevelC =
    27 -
    0.45 * Math.abs(latitude) +
    0.28 * Math.abs(latitude) * summer +
    4 * day +
    waves(seed, WARMTH, at, spot);
  const temperatureC = seaLevelC - 0.0065 * elevationM;
  const relativeHumidityPercent = Math.min(99, Math.max(25, 78 - 3 * day - waves(seed, WARMTH, at, spot)));
  const seaLevelHpa = 1015 + waves(seed, PRESSURE, at, spot);
  const warm = temperatureC + 273.15 + 0.0065 * elevationM;
  return {
    temperatureC,
    relativeHumidityPercent,
    dewPointC: dewPoint(temperatureC, relativeHumidityPercent),
    seaLevelHpa,
    // Open-Meteo's own formula (Meteorology.swift): the hour's temperature, the standard lapse.
    cloudPercent: Math.min(100, Math.max(0, 50 + waves(seed, CLOUDS, at, spot))),
    windMs: Math.max(0, 4 + waves(seed, WINDS, at, spot)),
    snowM: summer < 0 ? 0.2 * -summer : 0,
    // The sun is up while it is a good part of the way to the warmest hour; sunrise and sunset are not the fake's matter.
    isDay: day > -0.3,
    stationHpa: seaLevelHpa * (1 - (0.0065 * elevationM) / warm) ** 5.25578,
  };
}

/** Magnus formula over water, WMO-No. 8: good enough for invented weather. */
function dewPoint(temperatureC: number, percent: number): number {
  const gamma = Math.log(percent / 100) + (17.62 * temperatureC) / (243.12 + temperatureC);
  return (243.12 * gamma) / (17.62 - gamma);
}

/** Height of the invented ground. */
export function groundM(latitude: number, longitude: number): number {
  return Math.round(300 + 150 * Math.sin(latitude * 3) + 120 * Math.cos(longitude * 2));
}

export function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
