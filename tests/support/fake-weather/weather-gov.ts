import type { World } from './open-meteo';
import { groundM, rounded, weatherAt } from './weather';

const HOUR = 3_600_000;
const HOURS = 168;

/** The grid cell carries its coordinates in tenths of a degree, so that the fake needs no map. */
export function weatherGovPoint(latitude: number, longitude: number): object {
  const [gridX, gridY] = [Math.round((longitude + 180) * 10), Math.round((latitude + 90) * 10)];
  return {
    id: `https://api.weather.gov/points/${latitude},${longitude}`,
    type: 'Feature',
    properties: {
      cwa: 'FAK',
      gridId: 'FAK',
      gridX,
      gridY,
      // Leads nowhere: a client that follows it instead of building its own address is found out.
      forecastGridData: `https://weather-gov.invalid/gridpoints/FAK/${gridX},${gridY}`,
      timeZone: 'America/Chicago',
    },
  };
}

export function weatherGovGrid(gridX: number, gridY: number, world: World): object {
  const [longitude, latitude] = [gridX / 10 - 180, gridY / 10 - 90];
  const elevationM = groundM(latitude, longitude);
  const start = Math.floor(world.now / HOUR) * HOUR;
  const rows = Array.from({ length: HOURS }, (_, i) => {
    const at = start + (i - 3) * HOUR;
    return { at, weather: weatherAt(world.seed, at, { latitude, longitude, elevationM }) };
  });
  // A cell of some 2.5 km around the point.
  const corners = [
    [-0.015, 0.011],
    [-0.017, -0.011],
    [0.015, -0.012],
    [0.017, 0.01],
    [-0.015, 0.011],
  ] as const;
  return {
    type: 'Feature',
    geometry: {
      type: 'Polygon',
      coordinates: [corners.map(([east, north]) => [longitude + east, latitude + north])],
    },
    properties: {
      updateTime: iso(start - HOUR),
      validTimes: `${iso(start - 3 * HOUR)}/P7D`,
      elevation: { unitCode: 'wmoUnit:m', value: elevationM },
      gridId: 'FAK',
      gridX: String(gridX),
      gridY: String(gridY),
      // Whole degrees Fahrenheit in Celsius, as the offices draw them.
      temperature: layer(
        'wmoUnit:degC',
        rows.map((r) => ({ at: r.at, value: wholeFahrenheit(r.weather.temperatureC) })),
      ),
      dewpoint: layer(
        'wmoUnit:degC',
        rows.slice(2).map((r) => ({ at: r.at, value: wholeFahrenheit(r.weather.dewPointC) })),
      ),
      relativeHumidity: layer(
        'wmoUnit:percent',
        rows.map((r) => ({ at: r.at, value: rounded(r.weather.relativeHumidityPercent, 0) })),
      ),
      skyCover: layer(
        'wmoUnit:percent',
        rows.map((r) => ({ at: r.at, value: rounded(r.weather.cloudPercent, 0) })),
      ),
      windSpeed: layer(
        'wmoUnit:km_h-1',
        rows.map((r) => ({ at: r.at, value: rounded(r.weather.windMs * 3.6, 1) })),
      ),
      pressure: { values: [] },
    },
  };
}

const wholeFahrenheit = (celsius: number): number => (Math.round(celsius * 1.8 + 32) - 32) / 1.8;

type Value = { readonly at: number; readonly value: number };

/** Equal neighbours become one run with an ISO 8601 duration, days and all. */
function layer(uom: string, values: readonly Value[]): object {
  const runs: { from: number; hours: number; value: number }[] = [];
  for (const { at, value } of values) {
    const last = runs.at(-1);
    if (last !== undefined && last.value === value) last.hours += 1;
    else runs.push({ from: at, hours: 1, value });
  }
  return {
    uom,
    values: runs.map((run) => ({ validTime: `${iso(run.from)}/${duration(run.hours)}`, value: run.value })),
  };
}

function duration(hours: number): string {
  const [days, rest] = [Math.floor(hours / 24), hours % 24];
  return `P${days > 0 ? `${days}D` : ''}${rest > 0 ? `T${rest}H` : ''}`;
}

const iso = (at: number): string => new Date(at).toISOString().replace('.000Z', '+00:00');
