import type { World } from './open-meteo';
import { groundM, rounded, weatherAt } from './weather';

const HOUR = 3_600_000;
const HOURLY_ROWS = 56;
const ROWS = 82;

export function metNorwayForecast(query: URLSearchParams, world: World): object {
  const [latitude, longitude] = [Number(query.get('lat')), Number(query.get('lon'))];
  const asked = query.get('altitude');
  const elevationM = asked === null ? groundM(latitude, longitude) : Number(asked);
  const start = Math.floor(world.now / HOUR) * HOUR;
  const times = Array.from({ length: ROWS }, (_, i) =>
    i < HOURLY_ROWS ? start + i * HOUR : nextSixth(start + HOURLY_ROWS * HOUR) + (i - HOURLY_ROWS) * 6 * HOUR,
  );
  return {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [longitude, latitude, elevationM] },
    properties: {
      meta: {
        updated_at: iso(start - HOUR),
        units: {
          air_pressure_at_sea_level: 'hPa',
          air_temperature: 'celsius',
          dew_point_temperature: 'celsius',
          relative_humidity: '%',
          cloud_area_fraction: '%',
          wind_speed: 'm/s',
        },
      },
      timeseries: times.map((at) => ({
        time: iso(at),
        data: { instant: { details: details(world.seed, at, { latitude, longitude, elevationM }) } },
      })),
    },
  };
}

function details(seed: number, at: number, spot: Parameters<typeof weatherAt>[2]): object {
  const weather = weatherAt(seed, at, spot);
  return {
    air_pressure_at_sea_level: rounded(weather.seaLevelHpa, 1),
    // A model of its own: a little warmer.
    air_temperature: rounded(weather.temperatureC + 0.3, 1),
    air_temperature_percentile_10: rounded(weather.temperatureC - 1.0, 1),
    air_temperature_percentile_90: rounded(weather.temperatureC + 1.6, 1),
    dew_point_temperature: rounded(weather.dewPointC, 1),
    relative_humidity: rounded(weather.relativeHumidityPercent, 1),
    cloud_area_fraction: rounded(weather.cloudPercent, 1),
    wind_speed: rounded(weather.windMs, 1),
  };
}

const nextSixth = (at: number): number => Math.ceil(at / (6 * HOUR)) * 6 * HOUR;
const iso = (at: number): string => new Date(at).toISOString().replace('.000Z', 'Z');
