import type { World } from './open-meteo';
import { groundM, rounded, weatherAt } from './weather';

const MINUTE = 60_000;

type FakeStation = {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number;
};

/** North [°] and up [m] of the middle of the cell: 30 km, 8 km, and one too far to be asked. */
const AROUND = [
  { name: 'Fake Field', north: 0.27, up: 35 },
  { name: 'Fake Lake', north: 0.072, up: 40 },
  { name: 'Fake Far Away', north: 1.3, up: 10 },
] as const;

/** A name of four letters and figures for each station of a cell. */
function nameOf(gridX: number, gridY: number, i: number): string {
  return `K${((gridX * 31 + gridY * 7 + i) % 46_656).toString(36).padStart(3, '0').toUpperCase()}`;
}

const listed = new Map<string, FakeStation>();

/** Not in the order of their distance: whoever wants the nearest has to look. */
export function weatherGovStations(gridX: number, gridY: number): object {
  const [longitude, latitude] = [gridX / 10 - 180, gridY / 10 - 90];
  const features = AROUND.map(({ name, north, up }, i) => {
    const station = {
      id: nameOf(gridX, gridY, i),
      name,
      latitude: rounded(latitude + north, 4),
      longitude,
      elevationM: groundM(latitude, longitude) + up,
    };
    listed.set(station.id, station);
    return {
      id: `https://weather-gov.invalid/stations/${station.id}`,
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [station.longitude, station.latitude] },
      properties: {
        '@type': 'wx:ObservationStation',
        elevation: { unitCode: 'wmoUnit:m', value: station.elevationM },
        stationIdentifier: station.id,
        name,
        timeZone: 'America/Chicago',
      },
    };
  });
  return { type: 'FeatureCollection', features };
}

const two = (value: number): string => String(Math.abs(value)).padStart(2, '0');
const degrees = (celsius: number): string =>
  `${Math.round(celsius) < 0 ? 'M' : ''}${two(Math.round(celsius))}`;
const tenths = (celsius: number): string =>
  `${celsius < 0 ? 1 : 0}${String(Math.round(Math.abs(celsius) * 10)).padStart(3, '0')}`;

/** QNH of the standard atmosphere's definition, by hand: the setting that reads the station's height [hPa]. */
function altimeterHpa(stationHpa: number, elevationM: number): number {
  const n = 0.190263;
  return (stationHpa ** n + 1013.25 ** n * ((0.0065 * elevationM) / 288.15)) ** (1 / n);
}

/** What a station last observed, a quarter of an hour ago; null for one that was never listed. */
export function weatherGovLatest(id: string, world: World): object | null {
  const station = listed.get(id);
  if (station === undefined) return null;
  const { latitude, longitude, elevationM } = station;
  const at = Math.floor(world.now / MINUTE) * MINUTE - 15 * MINUTE;
  const weather = weatherAt(world.seed, at, station);
  const [temperature, dewPoint] = [rounded(weather.temperatureC, 1), rounded(weather.dewPointC, 1)];
  const altimeter = altimeterHpa(weather.stationHpa, elevationM);
  const inches = Math.round((altimeter / 33.86389) * 100);
  const time = new Date(at).toISOString();
  const stamp = `${time.slice(8, 10)}${time.slice(11, 13)}${time.slice(14, 16)}Z`;
  const told = (unitCode: string, value: number | null) => ({ unitCode, value, qualityControl: 'V' });
  return {
    id: `https://weather-gov.invalid/stations/${id}/observations/${time}`,
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [rounded(longitude, 2), rounded(latitude, 2)] },
    properties: {
      '@type': 'wx:ObservationStation',
      elevation: { unitCode: 'wmoUnit:m', value: elevationM },
      station: `https://api.weather.gov/stations/${id}`,
      timestamp: time.replace('.000Z', '+00:00'),
      rawMessage: `${id} ${stamp} AUTO 18004KT 10SM CLR ${degrees(temperature)}/${degrees(dewPoint)} A${inches} RMK AO2 T${tenths(temperature)}${tenths(dewPoint)}`,
      textDescription: 'Clear',
      temperature: told('wmoUnit:degC', temperature),
      dewpoint: told('wmoUnit:degC', dewPoint),
      windSpeed: told('wmoUnit:km_h-1', 7.56),
      barometricPressure: told('wmoUnit:Pa', Math.round(inches * 33.86389)),
      seaLevelPressure: told('wmoUnit:Pa', Math.round(weather.seaLevelHpa * 10) * 10),
      relativeHumidity: told('wmoUnit:percent', weather.relativeHumidityPercent),
    },
  };
}
