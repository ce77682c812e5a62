import { groundM, rounded, type Weather, weatherAt } from './weather';

export type World = { readonly seed: number; readonly now: number };

const HOUR = 3_600_000;

const COLUMNS: Readonly<Record<string, { unit: string; of: (weather: Weather) => number }>> = {
  temperature_2m: { unit: '°C', of: (w) => rounded(w.temperatureC, 1) },
  dew_point_2m: { unit: '°C', of: (w) => rounded(w.dewPointC, 1) },
  relative_humidity_2m: { unit: '%', of: (w) => rounded(w.relativeHumidityPercent, 0) },
  surface_pressure: { unit: 'hPa', of: (w) => rounded(w.stationHpa, 1) },
  pressure_msl: { unit: 'hPa', of: (w) => rounded(w.seaLevelHpa, 1) },
  wind_speed_10m: { unit: 'm/s', of: (w) => rounded(w.windMs, 2) },
  cloud_cover: { unit: '%', of: (w) => rounded(w.cloudPercent, 0) },
  snow_depth: { unit: 'm', of: (w) => rounded(w.snowM, 2) },
  is_day: { unit: '', of: (w) => (w.isDay ? 1 : 0) },
};

function place(query: URLSearchParams): { latitude: number; longitude: number; elevationM: number } {
  const [latitude, longitude] = [Number(query.get('latitude')), Number(query.get('longitude'))];
  const asked = query.get('elevation');
  return { latitude, longitude, elevationM: asked === null ? groundM(latitude, longitude) : Number(asked) };
}

/** A query for a list of places as one for each: the service answers with a list where there is more than one. */
export function perPlace(query: URLSearchParams): URLSearchParams[] {
  const lists = (['latitude', 'longitude', 'elevation'] as const)
    .filter((name) => query.has(name))
    .map((name) => ({ name, values: (query.get(name) ?? '').split(',') }));
  const count = lists[0]?.values.length ?? 0;
  return Array.from({ length: count }, (_, i) => {
    const one = new URLSearchParams(query);
    for (const { name, values } of lists) one.set(name, values[i] ?? '');
    return one;
  });
}

function rowTimes(query: URLSearchParams, now: number): number[] {
  const hour = Math.floor(now / HOUR) * HOUR;
  const start = query.get('start_date');
  const end = query.get('end_date');
  // Days are counted in the place's own zone; the invented one keeps UTC-6.
  const midnight = query.get('timezone') === 'auto' ? 6 * HOUR : 0;
  const from =
    start === null
      ? hour - Number(query.get('past_hours') ?? 0) * HOUR
      : Date.parse(`${start}T00:00Z`) + midnight;
  const to =
    end === null
      ? hour + Number(query.get('forecast_hours') ?? 168) * HOUR
      : Date.parse(`${end}T24:00Z`) + midnight;
  const times: number[] = [];
  for (let at = from; at < to; at += HOUR) times.push(at);
  return times;
}

function head(query: URLSearchParams): object {
  const { latitude, longitude, elevationM } = place(query);
  return {
    // The grid cell's centre, not the point that was asked for.
    latitude: rounded(latitude + 0.007, 4),
    longitude: rounded(longitude - 0.004, 4),
    generationtime_ms: 0.21,
    utc_offset_seconds: 0,
    timezone: query.get('timezone') === 'auto' ? 'America/Chicago' : 'GMT',
    timezone_abbreviation: 'GMT',
    elevation: elevationM,
  };
}

export function openMeteoHours(query: URLSearchParams, world: World): object {
  const times = rowTimes(query, world.now);
  const names = (query.get('hourly') ?? '').split(',').filter((name) => COLUMNS[name] !== undefined);
  const rows = times.map((at) => weatherAt(world.seed, at, place(query)));
  return {
    ...head(query),
    hourly_units: {
      time: 'unixtime',
      ...Object.fromEntries(names.map((name) => [name, COLUMNS[name]!.unit])),
    },
    hourly: {
      time: times.map((at) => at / 1000),
      ...Object.fromEntries(names.map((name) => [name, rows.map(COLUMNS[name]!.of)])),
    },
  };
}

export function openMeteoSpread(query: URLSearchParams, world: World): object {
  const times = rowTimes(query, world.now);
  return {
    ...head(query),
    hourly_units: { time: 'unixtime', temperature_2m_spread: '°C' },
    hourly: {
      time: times.map((at) => at / 1000),
      temperature_2m_spread: times.map((at) => rounded(0.4 + (0.02 * Math.max(0, at - world.now)) / HOUR, 2)),
    },
  };
}

export function openMeteoElevation(query: URLSearchParams): object {
  return { elevation: perPlace(query).map((one) => place(one).elevationM) };
}

const PLACES = [
  {
    id: 9001,
    name: 'Pine Hollow',
    latitude: 46.79,
    longitude: -92.1,
    elevation: 280,
    feature_code: 'PPL',
    country_code: 'US',
    timezone: 'America/Chicago',
    population: 4200,
    country: 'United States',
    admin1: 'Minnesota',
    admin2: 'North County',
  },
  {
    id: 9002,
    name: 'Pine Lake',
    latitude: 45.2,
    longitude: -89.4,
    timezone: 'America/Chicago',
    country: 'United States',
    admin1: 'Wisconsin',
  },
  {
    id: 9003,
    name: 'Furuvik',
    latitude: 62.3,
    longitude: 14.9,
    elevation: 410,
    timezone: 'Europe/Stockholm',
    country: 'Sweden',
    admin1: 'Jämtland',
  },
] as const;

export function openMeteoPlaces(query: URLSearchParams): object {
  const name = (query.get('name') ?? '').toLowerCase();
  const results = PLACES.filter((found) => name.length >= 2 && found.name.toLowerCase().startsWith(name));
  // No match: the field is not there at all.
  return results.length === 0 ? { generationtime_ms: 0.4 } : { results, generationtime_ms: 0.4 };
}
