import { describe, expect, test } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import { historyAnswer } from '@/app/api/history/history-answers';
import { placeAnswer } from '@/app/api/places/place-answers';
import { historyJsonSchema, pastAirJsonSchema } from '@/lib/weather/history-json';
import { placesJsonSchema } from '@/lib/weather/places-json';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { groundM } from '@/tests/support/fake-weather/weather';
import { BRISK_TIMINGS, EVENING, weatherDeps } from '@/tests/support/weather-deps';
import { answerOf, problemOf } from './ask';

const fake = fakeWeatherForTests(() => EVENING);
const deps = () => weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS });
const REQUEST = new Request('http://localhost/api');
const places = (query: string) => handle(REQUEST, () => placeAnswer(`?${query}`, deps()));
const history = (query: string) => handle(REQUEST, () => historyAnswer(`?${query}`, deps()));
const SITE = 'lat=46.79&lon=-92.1&elevation=280';

describe('GET /api/places', () => {
  test('finds places by name, with the credit', async () => {
    const json = await answerOf(await places('q=pine%20hollow'), placesJsonSchema);
    expect(json.places).toEqual([
      {
        name: 'Pine Hollow',
        region: 'North County, Minnesota, United States',
        latitude: 46.79,
        longitude: -92.1,
        elevationM: 280,
        timezone: 'America/Chicago',
      },
    ]);
    expect(json.attribution).toContain('GeoNames');
  });

  test('finds none with an empty list', async () => {
    expect((await answerOf(await places('q=zzzz'), placesJsonSchema)).places).toEqual([]);
  });

  test('gives the height of the ground at a point', async () => {
    const json = await answerOf(await places('lat=46.79&lon=-92.1'), placesJsonSchema);
    expect(json.places[0]).toMatchObject({ elevationM: groundM(46.79, -92.1), timezone: null });
  });

  test('gives the heights of many points at once, in their order', async () => {
    const points = [
      [46.79, -92.1],
      [-45.03, 168.66],
      [0, 0],
    ] as const;
    const query = `points=${encodeURIComponent(points.map((point) => point.join(',')).join(';'))}`;
    const json = await answerOf(await places(query), placesJsonSchema);
    expect(
      json.places.map(({ latitude, longitude, elevationM }) => [latitude, longitude, elevationM]),
    ).toEqual(points.map(([latitude, longitude]) => [latitude, longitude, groundM(latitude, longitude)]));
  });

  test('takes a hundred points and no more', async () => {
    const many = (count: number) =>
      `points=${Array.from({ length: count }, (_, i) => `${i / 2},9`).join(';')}`;
    expect((await answerOf(await places(many(100)), placesJsonSchema)).places).toHaveLength(100);
    expect((await problemOf(await places(many(101)))).detail).toContain('at most 100 points');
  });

  test.each([
    ['points=', 400, 'pairs of degrees'],
    ['points=46.79', 400, 'pairs of degrees'],
    ['points=1,2;', 400, 'pairs of degrees'],
    ['points=1,2,3', 400, 'pairs of degrees'],
    ['points=91,0', 400, 'expected -90 to 90'],
    ['points=NaN,0', 400, 'degrees from -90 to 90'],
    ['points=1,2&lat=3&lon=4', 400, 'lat'],
    ['', 400, 'expected a name, or lat and lon'],
    ['q=x', 422, 'at least two letters'],
    ['q=', 422, 'at least two letters'],
    ['lat=46.79', 400, 'lon: is missing'],
    ['lat=100&lon=0', 400, 'expected -90 to 90'],
    [`q=${'x'.repeat(300)}`, 400, 'at most 200 characters'],
  ])('refuses %s', async (query, status, words) => {
    const problem = await problemOf(await places(query));
    expect(problem.status).toBe(status);
    expect(problem.detail).toContain(words);
  });

  test('says in words that the service did not answer', async () => {
    fake.setFault('all', 'reset');
    const response = await places('q=pine');
    expect(response.headers.get('retry-after')).toBe('30');
    expect((await problemOf(response)).detail).toContain('cannot be reached');
  });
});

describe('GET /api/history', () => {
  test('gives the riding hours of past winters by month', async () => {
    const json = await answerOf(await history(`${SITE}&months=12,1&years=2&hours=9-17`), historyJsonSchema);
    expect(json.months.map(({ month, hours }) => [month, hours])).toEqual([
      [12, 31 * 8 * 2],
      [1, 31 * 8 * 2],
    ]);
    expect(json.months[0]!.temperatureC.p10).toBeLessThan(json.months[0]!.temperatureC.p90);
    expect(json.timezone).toBe('America/Chicago');
  });

  test('gives the air at a past moment', async () => {
    const json = await answerOf(await history(`${SITE}&at=2026-12-20T20:00:00-06:00`), pastAirJsonSchema);
    expect(json).toMatchObject({ time: '2026-12-21T02:00:00Z', elevationM: 280 });
    expect(json.pressureHpa).toBeGreaterThan(930);
    expect(json.pressureHpa).toBeLessThan(1020);
  });

  test.each([
    [SITE, 400, 'expected months as numbers'],
    [`${SITE}&months=0`, 400, 'expected months'],
    [`${SITE}&months=13`, 400, 'expected months'],
    [`${SITE}&months=1&years=9`, 400, 'expected 1 to 5'],
    [`${SITE}&months=1&hours=20-8`, 400, 'expected clock hours'],
    [`${SITE}&at=yesterday`, 400, 'expected an ISO 8601 time'],
    [`${SITE}&at=2031-01-01T00:00:00Z`, 422, 'has not passed yet'],
  ])('refuses %s', async (query, status, words) => {
    const problem = await problemOf(await history(query));
    expect(problem.status).toBe(status);
    expect(problem.detail).toContain(words);
  });
});
