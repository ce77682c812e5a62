import { HttpResponse, http } from 'msw';
import { setupServer } from 'msw/node';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { expectOk } from '@/lib/result/result';
import { isoUtc, readInstant } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { getElevations } from '@/lib/weather/get-elevations';
import { getForecast } from '@/lib/weather/get-forecast';
import { getPlaces } from '@/lib/weather/get-places';
import { version } from '@/package.json';
import { BRISK_TIMINGS, handClock, weatherDeps } from '@/tests/support/weather-deps';
import { weatherFixture } from '@/tests/support/weather-fixture';

// Recorded answers under the services' own addresses, all the way to a forecast: tests/fixtures/weather/SOURCES.md.
const server = setupServer();
beforeAll(() => server.listen({ onUnhandledRequest: 'error' }));
afterEach(() => server.resetHandlers());
afterAll(() => server.close());

const instantOf = (iso: string) => expectOk(readInstant(iso));
const depsAt = (iso: string) => weatherDeps({ now: handClock(instantOf(iso)).now, timings: BRISK_TIMINGS });

const errorBodies = z.record(z.string(), z.object({ status: z.number(), body: z.unknown() }));
/** A service down in the words it was recorded with. */
function downAs(name: string): () => Response {
  const error = errorBodies.parse(weatherFixture('error-bodies.json'))[name]!;
  return () => HttpResponse.json(error.body as object, { status: error.status });
}

describe('recorded answers at the public addresses', () => {
  it("become London's hours by MET Norway while Open-Meteo is overloaded", async () => {
    const { data } = z
      .object({ data: z.looseObject({}) })
      .parse(weatherFixture('metno-complete-london.json'));
    const { headers } = z
      .object({ headers: z.object({ Expires: z.string(), 'Last-Modified': z.string() }) })
      .parse(weatherFixture('metno-response-headers.json'));
    let agent: string | null = null;
    server.use(
      http.get('https://api.open-meteo.com/v1/forecast', downAs('open-meteo 503')),
      http.get('https://api.met.no/weatherapi/locationforecast/2.0/complete', ({ request }) => {
        agent = request.headers.get('user-agent');
        expect(new URL(request.url).search).toBe('?lat=51.5&lon=-0.1&altitude=25');
        return HttpResponse.json(data, { headers });
      }),
    );
    const question = {
      latitude: 51.5,
      longitude: -0.1,
      elevation: metre(25),
      from: instantOf('2020-07-20T12:00:00Z'),
      hours: 6,
    };
    const forecast = expectOk(await getForecast(question, depsAt('2020-07-20T11:44:31Z')));
    expect(agent).toBe(`heavy-air/${version} tests@example.org`);
    expect(forecast).toMatchObject({
      by: 'met-norway',
      elevation: 25,
      tries: [{ source: 'open-meteo', problem: { code: 'bad-status', status: 503 } }],
    });
    expect(isoUtc(forecast.source.issuedAt!)).toBe('2020-07-20T01:30:57Z');
    // The recorded Expires.
    expect(isoUtc(forecast.freshUntil)).toBe('2020-07-20T12:16:23Z');
    expect(forecast.hours.map((hour) => isoUtc(hour.at)).slice(0, 2)).toEqual([
      '2020-07-20T12:00:00Z',
      '2020-07-20T13:00:00Z',
    ]);
    expect(kelvinToCelsius(forecast.hours[1]!.temperature)).toBeCloseTo(20.3, 9);
    // 1022.9 hPa at sea level less 25 m of air at 20.3 °C: 1022.9 (1 - 9.80665 * 25 / (287.05 * 293.5)) = 1019.92 hPa.
    expect(pascalToHectopascal(forecast.hours[1]!.pressure)).toBeCloseTo(1019.92, 1);
  });

  it("become the Gulf coast's hours by the US service, with the standard atmosphere marked", async () => {
    server.use(
      http.get('https://api.open-meteo.com/v1/forecast', downAs('open-meteo 429 hour')),
      http.get(
        'https://api.met.no/weatherapi/locationforecast/2.0/complete',
        () => new HttpResponse(null, { status: 403 }),
      ),
      http.get('https://api.weather.gov/points/30,-85', () =>
        HttpResponse.json(weatherFixture('nws-points-30_-85.json') as object),
      ),
      http.get('https://api.weather.gov/gridpoints/TAE/58,65', () =>
        HttpResponse.json(weatherFixture('nws-gridpoint-TAE-58-65-raw.json') as object),
      ),
    );
    const question = {
      latitude: 30,
      longitude: -85,
      elevation: null,
      from: instantOf('2022-02-04T04:00:00Z'),
      hours: 4,
    };
    const forecast = expectOk(await getForecast(question, depsAt('2022-02-04T03:30:00Z')));
    expect(forecast).toMatchObject({
      by: 'weather-gov',
      elevationFrom: 'service',
      tries: [
        { source: 'open-meteo', problem: { code: 'rate-limited', until: instantOf('2022-02-04T04:00:00Z') } },
        { source: 'met-norway', problem: { code: 'bad-status', status: 403 } },
      ],
    });
    expect(forecast.hours).toHaveLength(5);
    for (const hour of forecast.hours) {
      expect(kelvinToCelsius(hour.temperature)).toBeCloseTo(18.8889, 4);
      expect(hour).toMatchObject({ pressureFrom: 'standard', pressureBy: 'standard-atmosphere' });
      // ISO 2533:1975: 1013.25 hPa less 3.96 m of air at 0.12 hPa a metre.
      expect(pascalToHectopascal(hour.pressure)).toBeCloseTo(1012.77, 1);
    }
  });

  it.each([
    'nws 503 expired grid (weather-gov/api issue #29)',
    'nws 503 missing data (paulokuong/noaa issue #24)',
    'nws 500 generic (openapi.yaml ProblemDetail examples)',
  ])('are no forecast where every service is down, this one as "%s"', async (name) => {
    server.use(
      http.get('https://api.open-meteo.com/v1/forecast', downAs('open-meteo 429 day')),
      http.get('https://api.met.no/*', () => HttpResponse.error()),
      http.get('https://api.weather.gov/points/*', () =>
        HttpResponse.json(weatherFixture('nws-points-30_-85.json') as object),
      ),
      http.get('https://api.weather.gov/gridpoints/*', downAs(name)),
    );
    const question = {
      latitude: 30,
      longitude: -85,
      elevation: null,
      from: instantOf('2022-02-04T04:00:00Z'),
      hours: 4,
    };
    expect(await getForecast(question, depsAt('2022-02-04T03:30:00Z'))).toMatchObject({
      ok: false,
      reason: {
        code: 'all-sources-failed',
        tries: [
          { problem: { code: 'rate-limited', until: instantOf('2022-02-05T00:00:00Z') } },
          { problem: { code: 'unreachable' } },
          { problem: { code: 'bad-status' } },
        ],
      },
    });
  });

  it('become places and a height', async () => {
    server.use(
      http.get('https://geocoding-api.open-meteo.com/v1/search', () =>
        HttpResponse.json(weatherFixture('openmeteo-geocoding-hollywood.json') as object),
      ),
      http.get('https://api.open-meteo.com/v1/elevation', () =>
        HttpResponse.json(weatherFixture('openmeteo-elevation.json') as object),
      ),
    );
    const deps = depsAt('2027-01-16T22:10:00Z');
    const places = expectOk(await getPlaces('Hollywood', deps));
    expect(places.find((place) => place.region.includes('Ireland'))).toMatchObject({
      elevation: 175,
      zone: 'Europe/Dublin',
    });
    expect(expectOk(await getElevations([{ latitude: 52.4, longitude: 4.9 }], deps))).toEqual([11]);
  });
});
