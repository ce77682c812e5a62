import { describe, expect, test, vi } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import { forecastAnswers } from '@/app/api/forecast/forecast-answers';
import { GET, POST } from '@/app/api/forecast/route';
import { forecastSchema } from '@/lib/contract/forecast';
import { MINUTE_MS } from '@/lib/time/instant';
import { FAULTS } from '@/tests/support/fake-weather/faults';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { startFakeWeather } from '@/tests/support/fake-weather/server';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';
import { answerOf, problemOf } from './ask';

const fake = fakeWeatherForTests(() => EVENING);
const SITE = 'lat=46.79&lon=-92.1&elevation=280';

function server() {
  const clock = handClock();
  const deps = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now });
  const answers = forecastAnswers(deps);
  return {
    clock,
    deps,
    get: (query: string) =>
      handle(new Request(`http://localhost/api/forecast?${query}`), () => answers(`?${query}`)),
  };
}

describe('GET /api/forecast', () => {
  test('answers with the hours of the night, their units in their names, and the credit', async () => {
    const { get } = server();
    const json = await answerOf(await get(`${SITE}&from=2027-01-16T19:30:00-06:00&hours=8`), forecastSchema);
    expect(json).toMatchObject({
      latitude: 46.79,
      longitude: -92.1,
      elevationM: 280,
      by: 'open-meteo',
      attribution: 'Weather data by Open-Meteo.com',
      freshness: 'fresh',
      fetchedAt: '2027-01-16T22:10:00Z',
    });
    // From the hour before 01:30 UTC to the hour after 09:30.
    expect([json.hours[0]?.time, json.hours.at(-1)?.time]).toEqual([
      '2027-01-17T01:00:00Z',
      '2027-01-17T10:00:00Z',
    ]);
  });

  test('begins with the hour under way and gives two days where nothing else is asked', async () => {
    const json = await answerOf(await server().get('lat=46.79&lon=-92.1'), forecastSchema);
    expect([json.hours[0]?.time, json.hours.length]).toEqual(['2027-01-16T22:00:00Z', 49]);
    expect(json.elevationFrom).toBe('service');
  });

  test.each([
    ['', 'lat', 'is missing'],
    ['lat=46.79', 'lon', 'is missing'],
    ['lat=91&lon=0', 'lat', 'expected -90 to 90'],
    ['lat=46.79&lon=-181', 'lon', 'expected -180 to 180'],
    ['lat=&lon=0', 'lat', 'expected degrees'],
    ['lat=NaN&lon=0', 'lat', 'expected degrees'],
    ['lat=1e309&lon=0', 'lat', 'expected degrees'],
    ['lat=46,79&lon=0', 'lat', 'expected degrees'],
    [`${SITE}&hours=0`, 'hours', 'expected 1 or more'],
    [`${SITE}&hours=100000`, 'hours', 'expected at most 264'],
    [`${SITE}&hours=2.5`, 'hours', 'expected whole hours'],
    [`${SITE}&from=tonight`, 'from', 'expected an ISO 8601 time'],
    [`${SITE}&from=2027-01-16T19:30:00`, 'from', 'with offset'],
    ['lat=46.79&lon=-92.1&elevation=9000', 'elevation', 'expected -430 to 6000 m'],
    [`${SITE}&hous=3`, '', 'unknown field: "hous"'],
  ])('refuses %s with the field and the reason', async (query, path, reason) => {
    const problem = await problemOf(await server().get(query));
    expect(problem.status).toBe(400);
    expect(problem.errors?.[0]?.path).toBe(path);
    expect(problem.errors?.[0]?.detail).toContain(reason);
    expect(fake.calls()).toEqual([]);
  });

  test.each(FAULTS.filter((fault) => !['none', 'hang', 'slow-drip', 'no-pressure'].includes(fault)))(
    'says in words that no service answered, and when to come back: %s',
    async (fault) => {
      fake.setFault('all', fault);
      const response = await server().get(SITE);
      expect(Number(response.headers.get('retry-after'))).toBeGreaterThanOrEqual(1);
      const problem = await problemOf(response);
      expect(problem.status).toBe(503);
      for (const service of ['Open-Meteo', 'MET Norway', 'US National Weather Service'])
        expect(problem.detail).toContain(service);
    },
  );

  test('names the hours that were left out, and why', async () => {
    fake.setFault('open-meteo', 'one-hour-45');
    const json = await answerOf(await server().get(SITE), forecastSchema);
    expect(json.leftOut).toEqual([{ time: '2027-01-17T01:00:00Z', code: 'jump' }]);
    expect(json.hours.find(({ time }) => time === '2027-01-17T01:00:00Z')?.origin).toBe('filled');
  });

  test('names the service whose answer contradicts itself', async () => {
    fake.setFault('open-meteo', 'height-3000');
    const json = await answerOf(await server().get(SITE), forecastSchema);
    expect(json).toMatchObject({
      by: 'met-norway',
      leftOut: [],
      tries: [{ source: 'open-meteo', problem: { code: 'other-height' } }],
    });
  });

  test('says up to when the forecast reaches where more is asked', async () => {
    const problem = await problemOf(await server().get(`${SITE}&from=2027-03-01T00:00:00Z`));
    expect(problem.status).toBe(422);
    expect(problem.detail).toContain('2027-01-26');
  });

  test('sends the same question the same answer without work, until it is no longer fresh', async () => {
    const { get, clock, deps } = server();
    const from = '&from=2027-01-16T22:00:00Z';
    const first = await (await get(SITE + from)).text();
    const { fetch: _, ...rest } = deps;
    expect(rest.memory.forecasts.size()).toBe(1);
    clock.forward(14 * MINUTE_MS);
    expect(await (await get(SITE + from)).text()).toBe(first);
    expect(fake.calls()).toHaveLength(2);
    clock.forward(MINUTE_MS);
    expect(JSON.parse(await (await get(SITE + from)).text())).toMatchObject({
      fetchedAt: '2027-01-16T22:25:00Z',
    });
  });

  test('moves on with the hour where no start is asked', async () => {
    const { get, clock } = server();
    clock.forward(45 * MINUTE_MS);
    const before = await answerOf(await get(SITE), forecastSchema);
    clock.forward(6 * MINUTE_MS);
    const after = await answerOf(await get(SITE), forecastSchema);
    expect([before.hours[0]?.time, after.hours[0]?.time]).toEqual([
      '2027-01-16T22:00:00Z',
      '2027-01-16T23:00:00Z',
    ]);
    expect(after.fetchedAt).toBe(before.fetchedAt);
  });

  test('may be kept a minute by others while fresh, and not at all when old', async () => {
    const { get, clock } = server();
    expect((await get(SITE)).headers.get('cache-control')).toBe(
      'public, max-age=60, stale-while-revalidate=240',
    );
    fake.setFault('all', 'status-500');
    clock.forward(20 * MINUTE_MS);
    const stale = await get(SITE);
    expect(stale.headers.get('cache-control')).toBe('no-store');
    expect(await answerOf(stale, forecastSchema)).toMatchObject({
      freshness: 'stale',
      fetchedAt: '2027-01-16T22:10:00Z',
      tries: [{ source: 'open-meteo' }, { source: 'met-norway' }, { source: 'weather-gov' }],
    });
  });

  test('goes where the environment leads it, and takes no other method', async () => {
    // The route has the clock of its server, and a forecast that was made at another time is refused.
    const then = Date.UTC(2027, 0, 16, 22, 10);
    vi.useFakeTimers({ now: then, toFake: ['Date'] });
    const today = await startFakeWeather({ seed: 7, now: () => then });
    for (const [name, value] of Object.entries(today.environment())) vi.stubEnv(name, value);
    const response = await GET(new Request('http://localhost/api/forecast?lat=45.5&lon=-90.5'));
    vi.unstubAllEnvs();
    vi.useRealTimers();
    await today.close();
    expect((await answerOf(response, forecastSchema)).by).toBe('open-meteo');
    expect((await problemOf(await POST())).status).toBe(405);
  });
});
