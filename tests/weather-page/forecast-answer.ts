import type { ForecastJson } from '@/lib/contract/forecast';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';

/** Noon of the demo night in its own zone. */
export const NOON = Date.UTC(2027, 0, 16, 18);

type Given = {
  /** °C, one for each hour from `from`. */
  readonly celsius?: readonly number[];
  readonly from?: number;
  readonly fetchedAt?: number;
  readonly issuedAt?: number | null;
  readonly more?: Partial<ForecastJson>;
};

/** The demo night's own evening in °C, hour by hour from noon to 07:00. */
export const EVENING_C = [
  -8.3, -7.4, -6.7, -6.7, -6.9, -7.2, -7.8, -9.4, -11.9, -14.4, -16.7, -18.6, -20.3, -21.7, -22.5, -23.1,
  -23.3, -23.4, -23.2, -22.2,
] as const;

/** An invented answer of our own forecast address. */
export function forecastAnswer({
  celsius = EVENING_C,
  from = NOON,
  fetchedAt = NOON,
  issuedAt = null,
  more = {},
}: Given = {}): ForecastJson {
  return {
    latitude: 47.42,
    longitude: -93.61,
    elevationM: 402.336,
    elevationFrom: 'given',
    modelElevationM: 398,
    by: 'open-meteo',
    name: 'Open-Meteo',
    attribution: 'Weather data by Open-Meteo.com',
    attributionUrl: 'https://open-meteo.com/',
    issuedAt: issuedAt === null ? null : isoUtc(instant(issuedAt)),
    fetchedAt: isoUtc(instant(fetchedAt)),
    freshness: 'fresh',
    freshUntil: isoUtc(instant(fetchedAt + HOUR_MS / 4)),
    tries: [],
    missing: [],
    hours: celsius.map((temperatureC, i) => ({
      time: isoUtc(instant(from + i * HOUR_MS)),
      temperatureC,
      pressureHpa: 968,
      pressureFrom: 'station',
      relativeHumidity: 0.78,
      spreadK: 0.9,
      origin: 'forecast',
      rawModel: false,
      temperatureBy: 'open-meteo',
      pressureBy: 'open-meteo',
    })),
    ...more,
  };
}
