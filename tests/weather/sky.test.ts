import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { adaptMetNorway } from '@/lib/weather/met-norway/adapt';
import { metNorwaySchema } from '@/lib/weather/met-norway/schema';
import { adaptOpenMeteo } from '@/lib/weather/open-meteo/adapt';
import { openMeteoHoursSchema } from '@/lib/weather/open-meteo/schema';
import { sourcesFor } from '@/lib/weather/order';
import { parseAnswer } from '@/lib/weather/parse-answer';
import { adaptWeatherGov } from '@/lib/weather/weather-gov/adapt';
import { weatherGovGridSchema } from '@/lib/weather/weather-gov/schema';
import { openMeteoHours } from '@/tests/support/fake-weather/open-meteo';
import { weatherFixture } from '@/tests/support/weather-fixture';

const NAMES = 'temperature_2m,cloud_cover,wind_speed_10m,snow_depth,is_day';
const WORLD = { seed: 7, now: Date.UTC(2027, 0, 17, 6) };

/** What the invented service answers, with one of its parts changed. */
function openMeteo(change: { hourly?: object; hourly_units?: object } = {}) {
  const query = new URLSearchParams({
    latitude: '46.8',
    longitude: '-92.1',
    hourly: NAMES,
    forecast_hours: '3',
  });
  const answer = openMeteoHours(query, WORLD) as { hourly: object; hourly_units: object };
  const json = {
    ...answer,
    hourly: { ...answer.hourly, ...change.hourly },
    hourly_units: { ...answer.hourly_units, ...change.hourly_units },
  };
  return expectOk(adaptOpenMeteo(expectOk(parseAnswer(openMeteoHoursSchema, json)))).hours[0]!;
}

describe('The sky of a service', () => {
  it('comes from Open-Meteo in shares, metres per second and metres, 0 a number', () => {
    const hourly = {
      cloud_cover: [0, 5, 5],
      wind_speed_10m: [0, 1, 1],
      snow_depth: [0, 1, 1],
      is_day: [0, 1, 1],
    };
    expect(openMeteo({ hourly }).sky).toEqual({ cloudCover: 0, wind: 0, snowDepth: 0, daylight: false });
    const other = { cloud_cover: [40, 5, 5], snow_depth: [0.3, 1, 1], is_day: [1, 1, 1] };
    expect(openMeteo({ hourly: other }).sky).toMatchObject({
      cloudCover: 0.4,
      snowDepth: 0.3,
      daylight: true,
    });
  });

  it('is left out where it is missing, in another unit or no number: the hour is as good without', () => {
    const spoilt = openMeteo({
      hourly: {
        cloud_cover: 'clear',
        wind_speed_10m: [null, 1, 1],
        snow_depth: [-1, 1, 1],
        is_day: undefined,
      },
      hourly_units: { wind_speed_10m: 'km/h' },
    });
    expect(spoilt.sky).toEqual({ cloudCover: null, wind: null, snowDepth: null, daylight: null });
    expect(spoilt.temperature).not.toBeNull();
    expect(openMeteo({ hourly_units: { wind_speed_10m: 'km/h' } }).sky!.wind).toBeNull();
  });

  it("comes from an office's grid as percent and kilometres per hour", () => {
    const grid = expectOk(parseAnswer(weatherGovGridSchema, weatherFixture('nws-gridpoint-BMX-59-84.json')));
    const { hours } = expectOk(adaptWeatherGov(grid));
    // Read by eye: 38 % and 0 km/h at 18:00 on 20 February 2024, 3.704 km/h from 21:00.
    const at = (iso: string) => hours.find((hour) => hour.at === Date.parse(iso))!.sky!;
    expect(at('2024-02-20T18:00Z')).toEqual({ cloudCover: 0.38, wind: 0, snowDepth: null, daylight: null });
    expect(at('2024-02-20T21:00Z').wind).toBeCloseTo(3.704 / 3.6, 9);
  });

  it('comes from MET Norway where its units are known', () => {
    const details = { air_temperature: -8, cloud_area_fraction: 12.5, wind_speed: 0.4 };
    const forecast = (units: object) => ({
      geometry: { coordinates: [14.9, 62.3, 410] },
      properties: {
        meta: { updated_at: '2027-01-16T18:00:00Z', units },
        timeseries: [{ time: '2027-01-16T20:00:00Z', data: { instant: { details } } }],
      },
    });
    const read = (units: object) =>
      expectOk(adaptMetNorway(expectOk(parseAnswer(metNorwaySchema, forecast(units))))).hours[0]!.sky;
    expect(read({ cloud_area_fraction: '%', wind_speed: 'm/s' })).toMatchObject({
      cloudCover: 0.125,
      wind: 0.4,
    });
    expect(read({ cloud_area_fraction: 'octas' })).toMatchObject({ cloudCover: null, wind: null });
  });
});

describe('Whose temperature is raw', () => {
  const rawAt = (latitude: number, longitude: number) =>
    Object.fromEntries(
      sourcesFor({ latitude, longitude }).map(({ name, isRawModel }) => [
        name,
        isRawModel({ latitude, longitude }),
      ]),
    );

  it('is told by service and place: one hands on models, one corrects its own area, one is drawn by offices', () => {
    expect(rawAt(46.8, -92.1)).toEqual({ 'open-meteo': true, 'met-norway': true, 'weather-gov': false });
    expect(rawAt(62.3, 14.9)).toEqual({ 'met-norway': false, 'open-meteo': true });
  });
});
