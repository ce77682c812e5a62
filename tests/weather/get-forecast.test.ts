import { describe, expect, it, vi } from 'vitest';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant, MINUTE_MS } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import { copyKey } from '@/lib/weather/copy';
import { getForecast } from '@/lib/weather/get-forecast';
import { sourcesFor } from '@/lib/weather/order';
import { RETRY_AFTER_S } from '@/tests/support/fake-weather/faults';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { groundM, weatherAt } from '@/tests/support/fake-weather/weather';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';

const SITE = { latitude: 46.79, longitude: -92.1, elevation: metre(280) };
const TONIGHT = { ...SITE, from: EVENING, hours: 12 };
const fake = fakeWeatherForTests(() => EVENING);

/** Fresh dependencies on the fake with a clock in the test's hands. */
function fresh(overrides: { environment?: () => Readonly<Record<string, string>> } = {}) {
  const clock = handClock();
  const deps = weatherDeps({
    environment: fake.environment,
    timings: BRISK_TIMINGS,
    now: clock.now,
    ...overrides,
  });
  return { clock, deps };
}

const callsTo = (host: string) => fake.calls().filter((call) => call.startsWith(`${host} `));

describe('a forecast', () => {
  it('says who made it, when it was fetched, for what height, and whom to credit', async () => {
    const forecast = expectOk(await getForecast(TONIGHT, fresh().deps));
    expect(forecast).toMatchObject({
      by: 'open-meteo',
      place: { latitude: 46.79, longitude: -92.1 },
      elevation: 280,
      elevationFrom: 'given',
      freshness: 'fresh',
      freshUntil: EVENING + 15 * MINUTE_MS,
      source: {
        name: 'Open-Meteo',
        attribution: 'Weather data by Open-Meteo.com',
        issuedAt: null,
        fetchedAt: EVENING,
      },
    });
  });

  it('covers the night asked for, from the hour before its start to the hour after its end', async () => {
    const { hours } = expectOk(await getForecast(TONIGHT, fresh().deps));
    expect(hours[0]!.at).toBe(Date.UTC(2027, 0, 16, 22));
    expect(hours.at(-1)!.at).toBe(Date.UTC(2027, 0, 17, 11));
    expect(hours).toHaveLength(14);
  });

  it('has the station pressure of the service for the elevation given', async () => {
    const { hours } = expectOk(await getForecast(TONIGHT, fresh().deps));
    const truth = weatherAt(7, hours[3]!.at, { ...SITE, elevationM: 280 });
    expect(hours[3]).toMatchObject({
      pressureFrom: 'station',
      pressureBy: 'open-meteo',
      temperatureBy: 'open-meteo',
    });
    // The service rounds to a tenth.
    expect(Math.abs(hours[3]!.pressure / 100 - truth.stationHpa)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(Math.abs(hours[3]!.temperature - 273.15 - truth.temperatureC)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('carries the spread of the ensemble', async () => {
    const { hours } = expectOk(await getForecast(TONIGHT, fresh().deps));
    // The fake's ensemble spreads by 0.4 K now and 0.02 K more with every hour.
    expect(hours[1]!.spread).toBeCloseTo(0.4 + 0.02 * ((hours[1]!.at - EVENING) / HOUR_MS), 2);
  });

  it("takes the service's own height where none is given, and says so", async () => {
    const forecast = expectOk(await getForecast({ ...TONIGHT, elevation: null }, fresh().deps));
    const ground = groundM(46.79, -92.1);
    expect(forecast).toMatchObject({
      elevation: ground,
      elevationFrom: 'service',
      source: { modelElevation: ground },
    });
  });

  it('ends where the service ends, and beyond that says up to when it reaches', async () => {
    const { deps } = fresh();
    const late = expectOk(
      await getForecast({ ...TONIGHT, from: instant(EVENING + 9 * 24 * HOUR_MS), hours: 72 }, deps),
    );
    expect(late.hours.at(-1)!.at).toBe(Date.UTC(2027, 0, 26, 21));
    const tooLate = await getForecast({ ...TONIGHT, from: instant(EVENING + 30 * 24 * HOUR_MS) }, deps);
    expect(tooLate).toMatchObject({
      ok: false,
      reason: { code: 'outside-forecast', hoursEnd: Date.UTC(2027, 0, 26, 21) },
    });
  });

  it.each([
    [{ latitude: 91, longitude: 0 }, 'not-a-place'],
    [{ latitude: 0, longitude: 181 }, 'not-a-place'],
    [{ latitude: Number.NaN, longitude: 0 }, 'not-a-place'],
    [{ elevation: metre(9000) }, 'elevation-out-of-range'],
  ])('is refused for %j before anyone is asked', async (place, code) => {
    const result = await getForecast({ ...TONIGHT, ...place }, fresh().deps);
    expect(result).toMatchObject({ ok: false, reason: { code } });
    expect(fake.calls()).toEqual([]);
  });
});

describe('what is sent', () => {
  it('is numbers: coordinates to four decimals, the elevation in whole metres, times in UTC', async () => {
    await getForecast(
      { ...TONIGHT, latitude: 46.790_049_9, longitude: -92.123_456_7, elevation: metre(280.4) },
      fresh().deps,
    );
    expect(callsTo('open-meteo')).toEqual([
      'open-meteo /v1/forecast?latitude=46.79&longitude=-92.1235&elevation=280' +
        '&hourly=temperature_2m%2Crelative_humidity_2m%2Cdew_point_2m%2Csurface_pressure%2Cpressure_msl%2Ccloud_cover%2Cwind_speed_10m%2Csnow_depth%2Cis_day' +
        '&wind_speed_unit=ms&past_hours=24&forecast_hours=240&timeformat=unixtime&timezone=GMT',
    ]);
  });

  it('never is an elevation where none is given', async () => {
    await getForecast({ ...TONIGHT, elevation: null }, fresh().deps);
    expect(callsTo('open-meteo')[0]).not.toContain('elevation');
  });
});

describe('many who ask at once', () => {
  it('a thousand for the same night share one request to each service', async () => {
    const { deps } = fresh();
    const answers = await Promise.all(Array.from({ length: 1000 }, () => getForecast(TONIGHT, deps)));
    expect(answers.every((answer) => answer.ok)).toBe(true);
    expect(callsTo('open-meteo')).toHaveLength(1);
    expect(fake.calls()).toHaveLength(2);
    expect(callsTo('open-meteo-ensemble')).toHaveLength(1);
  });

  it('the same place for other hours is no new request', async () => {
    const { deps } = fresh();
    await getForecast(TONIGHT, deps);
    await getForecast({ ...TONIGHT, from: instant(EVENING + 24 * HOUR_MS), hours: 48 }, deps);
    expect(callsTo('open-meteo')).toHaveLength(1);
  });

  it('ten for ten places are served one after the other, as the service wants it', async () => {
    const { deps } = fresh();
    const places = Array.from({ length: 10 }, (_, i) => ({ ...TONIGHT, latitude: 45 + i / 10 }));
    const answers = await Promise.all(places.map((place) => getForecast(place, deps)));
    // The fake answers 429 as soon as two requests overlap.
    expect(answers.map((answer) => expectOk(answer).by)).toEqual(places.map(() => 'open-meteo'));
  });
});

describe('memory', () => {
  it('answers for a quarter of an hour without asking, then asks again', async () => {
    const { deps, clock } = fresh();
    await getForecast(TONIGHT, deps);
    clock.forward(15 * MINUTE_MS - 1);
    await getForecast(TONIGHT, deps);
    expect(callsTo('open-meteo')).toHaveLength(1);
    clock.forward(1);
    await getForecast(TONIGHT, deps);
    expect(callsTo('open-meteo')).toHaveLength(2);
    // The ensemble is good for three hours.
    expect(callsTo('open-meteo-ensemble')).toHaveLength(1);
  });

  it('keeps asking off a service that said when to come back, and uses the next one meanwhile', async () => {
    const { deps, clock } = fresh();
    fake.setFault('open-meteo', 'status-429');
    await getForecast(TONIGHT, deps);
    expect(callsTo('open-meteo')).toHaveLength(1);
    const other = expectOk(await getForecast({ ...TONIGHT, latitude: 47 }, deps));
    expect(other.tries).toEqual([
      { source: 'open-meteo', problem: { code: 'rate-limited', until: EVENING + RETRY_AFTER_S * 1000 } },
    ]);
    expect(callsTo('open-meteo')).toHaveLength(1);
    fake.setFault('open-meteo', 'none');
    clock.forward(RETRY_AFTER_S * 1000);
    expect(expectOk(await getForecast({ ...TONIGHT, latitude: 48 }, deps)).by).toBe('open-meteo');
  });

  it('lets a service rest after three failures in a row, and tries it again after half a minute', async () => {
    const { deps, clock } = fresh();
    fake.setFault('open-meteo', 'status-500');
    const ask = async (latitude: number) => expectOk(await getForecast({ ...TONIGHT, latitude }, deps));
    for (const latitude of [45, 45.1, 45.2]) await ask(latitude);
    // Each with its one retry.
    expect(callsTo('open-meteo')).toHaveLength(6);
    expect((await ask(45.3)).tries[0]!.problem).toMatchObject({ code: 'resting', until: EVENING + 30_000 });
    expect(callsTo('open-meteo')).toHaveLength(6);
    clock.forward(30_000);
    fake.setFault('open-meteo', 'none');
    expect((await ask(45.4)).by).toBe('open-meteo');
  });

  it('does not hold an invalid question against a service', async () => {
    const { deps } = fresh();
    const bad: typeof fetch = async () =>
      Response.json({ error: true, reason: 'Latitude must be in range' }, { status: 400 });
    for (let i = 0; i < 5; i += 1)
      await getForecast({ ...TONIGHT, latitude: 45 + i }, { ...deps, fetch: bad });
    expect(expectOk(await getForecast(TONIGHT, deps)).by).toBe('open-meteo');
  });

  it('tells others at once for ten seconds that there is nothing, without asking again', async () => {
    const { deps, clock } = fresh();
    fake.setFault('all', 'status-500');
    const first = await getForecast(TONIGHT, deps);
    const calls = fake.calls().length;
    expect(await getForecast(TONIGHT, deps)).toEqual(first);
    expect(fake.calls()).toHaveLength(calls);
    expect(first).toMatchObject({ reason: { retryAfterSeconds: 30 } });
    clock.forward(10_000);
    fake.setFault('all', 'none');
    expect((await getForecast(TONIGHT, deps)).ok).toBe(true);
  });
});

describe('what comes too late', () => {
  it('is in the next answer: a spread a minute later, without asking for the forecast again', async () => {
    const { deps, clock } = fresh();
    const impatient = { ...deps, timings: { ...deps.timings, spreadGraceMs: 0 } };
    const first = expectOk(await getForecast(TONIGHT, impatient));
    expect(first.hours.every((hour) => hour.spread === null)).toBe(true);
    expect(first.freshUntil).toBe(EVENING + MINUTE_MS);
    await vi.waitUntil(() => deps.memory.spreads.size() === 1, 5000);
    clock.forward(MINUTE_MS);
    const second = expectOk(await getForecast(TONIGHT, impatient));
    expect(second.hours.every((hour) => hour.spread !== null)).toBe(true);
    expect([callsTo('open-meteo').length, callsTo('open-meteo-ensemble').length]).toEqual([1, 1]);
  });

  it('is kept for the next question: a service that lost to a faster one', async () => {
    const { deps, clock } = fresh();
    const slowFirst: typeof fetch = async (input, init) => {
      if (String(input).includes('/open-meteo/')) await new Promise((resolve) => setTimeout(resolve, 60));
      return fetch(input, init);
    };
    const hurried = { ...deps, fetch: slowFirst, timings: { ...deps.timings, hedgeMs: 5 } };
    expect(expectOk(await getForecast(TONIGHT, hurried)).by).toBe('met-norway');
    const key = copyKey('open-meteo', SITE);
    await vi.waitUntil(() => deps.memory.copies.get(key) !== undefined, 5000);
    // As long as the one that answered is fresh it stays: no change of mind for its own sake.
    clock.forward(10 * MINUTE_MS);
    expect(expectOk(await getForecast(TONIGHT, hurried)).by).toBe('met-norway');
  });
});

describe('MET Norway', () => {
  const NORTH = { ...TONIGHT, latitude: 62.3, longitude: 14.9 };

  it.each([
    ['Jämtland', 62.3, 14.9, ['met-norway', 'open-meteo']],
    ['Svalbard', 78.2, 15.6, ['met-norway', 'open-meteo']],
    ['Minnesota', 46.8, -92.1, ['open-meteo', 'met-norway', 'weather-gov']],
    ['the Alps', 46.8, 9.8, ['open-meteo', 'met-norway']],
    ['Fairbanks', 64.8, -147.7, ['open-meteo', 'met-norway', 'weather-gov']],
  ])('and the others are asked in this order in %s', (_name, latitude, longitude, order) =>
    expect(sourcesFor({ latitude, longitude }).map((source) => source.name)).toEqual(order),
  );

  it('is asked first in the north, with its issue time and its own spread', async () => {
    const forecast = expectOk(await getForecast(NORTH, fresh().deps));
    expect(forecast).toMatchObject({
      by: 'met-norway',
      tries: [],
      source: { issuedAt: Date.UTC(2027, 0, 16, 21) },
    });
    // Percentiles 2.6 K apart: 2.6 / (2 * 1.2816).
    expect(forecast.hours[0]!.spread).toBeCloseTo(1.014, 1);
    expect(fake.calls()).toHaveLength(1);
  });

  it('is not asked before its Expires, and then only whether anything changed', async () => {
    const { deps, clock } = fresh();
    await getForecast(NORTH, deps);
    clock.forward(31 * MINUTE_MS);
    await getForecast(NORTH, deps);
    expect(callsTo('met-norway')).toHaveLength(1);
    clock.forward(2 * MINUTE_MS);
    const renewed = expectOk(await getForecast(NORTH, deps));
    expect(callsTo('met-norway')).toHaveLength(2);
    // The fake's clock stands: it answers 304, and the copy at hand counts as fetched now.
    expect(renewed).toMatchObject({
      by: 'met-norway',
      freshness: 'fresh',
      source: { fetchedAt: clock.now() },
    });
  });

  it('is passed over with the reason where no contact is set', async () => {
    const environment = () => ({ ...fake.environment(), WEATHER_CONTACT: '' });
    const forecast = expectOk(await getForecast(NORTH, fresh({ environment }).deps));
    expect(forecast).toMatchObject({
      by: 'open-meteo',
      tries: [{ source: 'met-norway', problem: { code: 'no-contact' } }],
    });
    expect(callsTo('met-norway')).toEqual([]);
  });

  it('covers a window with its six-hourly steps on either side of it', async () => {
    const { deps } = fresh();
    const { hours } = expectOk(
      await getForecast({ ...NORTH, from: instant(Date.UTC(2027, 0, 21, 20)), hours: 2 }, deps),
    );
    expect(hours.map((hour) => hour.at)).toEqual([Date.UTC(2027, 0, 21, 18), Date.UTC(2027, 0, 22, 0)]);
  });
});

describe('the US service', () => {
  function lastResort() {
    fake.setFault('open-meteo', 'status-500');
    fake.setFault('met-norway', 'status-500');
    return fresh();
  }

  it('stands in with the standard atmosphere for pressure, marked, where nothing better is known', async () => {
    const forecast = expectOk(await getForecast(TONIGHT, lastResort().deps));
    expect(forecast).toMatchObject({ by: 'weather-gov', freshness: 'fresh' });
    for (const hour of forecast.hours)
      expect(hour).toMatchObject({
        pressureFrom: 'standard',
        pressureBy: 'standard-atmosphere',
        pressure: standardPressure(metre(280)),
      });
  });

  it('borrows the pressure of the last good copy of another, and credits both', async () => {
    const { deps, clock } = fresh();
    const before = expectOk(await getForecast(TONIGHT, deps));
    fake.setFault('open-meteo', 'status-500');
    fake.setFault('met-norway', 'status-500');
    clock.forward(3 * HOUR_MS);
    const forecast = expectOk(await getForecast(TONIGHT, deps));
    expect(forecast).toMatchObject({ by: 'weather-gov', freshness: 'fresh' });
    expect(forecast.hours[4]).toMatchObject({
      temperatureBy: 'weather-gov',
      pressureBy: 'open-meteo',
      pressureFrom: 'station',
      pressure: before.hours.find((hour) => hour.at === forecast.hours[4]!.at)!.pressure,
    });
    expect(forecast.source.attribution).toBe(
      'Forecast by the US National Weather Service; pressure: Weather data by Open-Meteo.com',
    );
  });

  it('is moved from its ground to the site', async () => {
    const { deps } = lastResort();
    const low = expectOk(await getForecast(TONIGHT, deps));
    const high = expectOk(await getForecast({ ...TONIGHT, elevation: metre(1280) }, deps));
    expect(low.hours[2]!.temperature - high.hours[2]!.temperature).toBeCloseTo(6.5, 9);
    expect(high.source.modelElevation).toBe(groundM(46.8, -92.1));
  });

  it('is asked for the cell of a point once a week', async () => {
    const { deps, clock } = lastResort();
    await getForecast(TONIGHT, deps);
    clock.forward(HOUR_MS);
    await getForecast(TONIGHT, deps);
    expect(callsTo('weather-gov').map((call) => call.split('/')[1])).toEqual([
      'points',
      'gridpoints',
      'gridpoints',
    ]);
    clock.forward(7 * 24 * HOUR_MS);
    await getForecast(TONIGHT, deps);
    expect(
      callsTo('weather-gov')
        .map((call) => call.split('/')[1])
        .slice(3),
    ).toEqual(['points', 'gridpoints']);
  });

  it('is asked for the cell anew where the grid was redrawn, once', async () => {
    const { deps } = lastResort();
    deps.memory.gridCells.set('46.79,-92.1', {
      value: { gridId: 'OLD', gridX: 1, gridY: 2 },
      freshUntil: instant(EVENING + HOUR_MS),
    });
    expect(expectOk(await getForecast(TONIGHT, deps)).by).toBe('weather-gov');
    expect(callsTo('weather-gov').map((call) => call.split(' ')[1])).toEqual([
      '/gridpoints/OLD/1,2',
      '/points/46.79,-92.1',
      '/gridpoints/FAK/879,1368',
    ]);
  });

  it('is not asked about places outside its area', async () => {
    const { deps } = lastResort();
    const result = await getForecast({ ...TONIGHT, latitude: 46.8, longitude: 9.8 }, deps);
    expect(result).toMatchObject({
      ok: false,
      reason: { tries: [{ source: 'open-meteo' }, { source: 'met-norway' }] },
    });
    expect(callsTo('weather-gov')).toEqual([]);
  });

  it('and a point it does not know is outside its area, not a failure', async () => {
    const { deps } = lastResort();
    const result = await getForecast({ ...TONIGHT, latitude: 18.2, longitude: -66.5 }, deps);
    expect(result).toMatchObject({
      reason: { tries: [{}, {}, { source: 'weather-gov', problem: { code: 'outside-area' } }] },
    });
  });
});
