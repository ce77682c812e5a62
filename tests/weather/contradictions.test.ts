import { describe, expect, it } from 'vitest';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant, MINUTE_MS } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import type { Forecast } from '@/lib/weather/forecast';
import { getForecast } from '@/lib/weather/get-forecast';
import { givers, SPOILT_ANSWERS, type SpoiltAnswer } from '@/tests/support/fake-weather/contradictions';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { weatherAt } from '@/tests/support/fake-weather/weather';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';

const SEED = 7;
const SITE = { latitude: 46.79, longitude: -92.1, elevation: metre(280) };
const TONIGHT = { ...SITE, from: EVENING, hours: 12 };
const HOSTS = ['open-meteo', 'met-norway', 'weather-gov'] as const;
type Host = (typeof HOSTS)[number];

const fake = fakeWeatherForTests(() => EVENING, SEED);

/** What each is called when it is told; where only some hours are wrong, these are left out. */
const CODES: Readonly<Record<SpoiltAnswer, string>> = {
  'fahrenheit-called-celsius': 'humidity-disagrees',
  'eighteen-degrees-off': 'other-place',
  'week-old': 'old-issue',
  'station-is-sea-level': 'pressure-disagrees',
  'one-hour-45': 'jump',
  'humidity-a-fraction': 'humidity-disagrees',
  'height-3000': 'other-height',
  'all-zeros': 'flat',
  'flat-line': 'flat',
  'twelve-hours-ahead': 'other-hours',
  'twelve-hours-behind': 'other-hours',
  'issued-in-2024': 'old-issue',
  'overlapping-intervals': 'two-values',
  'issued-tomorrow': 'future-issue',
  'mirrored-longitude': 'other-place',
  'latitude-and-longitude-swapped': 'other-place',
  'dew-point-and-temperature-swapped': 'humidity-disagrees',
  'pressures-swapped': 'pressure-disagrees',
  'one-hour-low-pressure': 'jump',
  'two-places-in-turns': 'jump',
  'another-place-from-midnight': 'jump',
  'begins-tomorrow': 'other-hours',
  'kelvin-called-celsius': 'implausible',
  'temperature-from-elsewhere': 'humidity-disagrees',
  'one-hour-of-another-day': 'humidity-disagrees',
};
/** The service does not say when its forecast was made, so its hours betray it. */
const codeOf = (name: SpoiltAnswer, host: Host): string =>
  name === 'week-old' && host === 'open-meteo' ? 'other-hours' : CODES[name];
const SOME_HOURS: readonly SpoiltAnswer[] = [
  'one-hour-45',
  'overlapping-intervals',
  'one-hour-low-pressure',
  'one-hour-of-another-day',
];

const each = SPOILT_ANSWERS.flatMap((name) => givers(name).map((host) => [name, host] as const));
const wholly = each.filter(([name]) => !SOME_HOURS.includes(name));
const partly = each.filter(([name]) => SOME_HOURS.includes(name));

/** No number is wrong: the invented truth give or take what the fake services differ by, on every hour. */
function expectRight(forecast: Forecast): void {
  expect(forecast.hours.length).toBeGreaterThanOrEqual(12);
  for (const hour of forecast.hours) {
    const truth = weatherAt(SEED, hour.at, { ...SITE, elevationM: 280 });
    expect(Math.abs(hour.temperature - 273.15 - truth.temperatureC)).toBeLessThan(1);
    if (hour.pressureBy === 'standard-atmosphere') expect(hour.pressure).toBe(standardPressure(metre(280)));
    else expect(Math.abs(hour.pressure / 100 - truth.stationHpa)).toBeLessThan(0.6);
  }
}

function deps() {
  return weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS });
}

describe('an answer that contradicts itself', () => {
  it.each(wholly)('by %s from %s alone is named and not shown', async (name, host) => {
    for (const other of HOSTS) fake.setFault(other, other === host ? name : 'status-500');
    expect(await getForecast(TONIGHT, deps())).toMatchObject({
      ok: false,
      reason: {
        code: 'all-sources-failed',
        tries: expect.arrayContaining([
          { source: host, problem: expect.objectContaining({ code: codeOf(name, host) }) },
        ]),
      },
    });
  });

  it.each(SPOILT_ANSWERS.filter((name) => givers(name).includes('open-meteo') && !SOME_HOURS.includes(name)))(
    'by %s from the first service makes way for the next, and is told',
    async (name) => {
      fake.setFault('open-meteo', name);
      const forecast = expectOk(await getForecast(TONIGHT, deps()));
      expectRight(forecast);
      expect(forecast).toMatchObject({
        by: 'met-norway',
        freshness: 'fresh',
        tries: [{ source: 'open-meteo', problem: { code: codeOf(name, 'open-meteo') } }],
      });
    },
  );

  it.each(SPOILT_ANSWERS.filter((name) => givers(name).length === 3 && !SOME_HOURS.includes(name)))(
    'by %s from all services leaves the last good copy, labelled stale',
    async (name) => {
      const clock = handClock();
      const before = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now });
      expectOk(await getForecast(TONIGHT, before));
      fake.setFault('all', name);
      clock.forward(20 * MINUTE_MS);
      const forecast = expectOk(await getForecast(TONIGHT, before));
      expectRight(forecast);
      expect(forecast).toMatchObject({ freshness: 'stale', by: 'open-meteo' });
      expect(forecast.tries.map(({ problem }) => problem.code)).toContain(codeOf(name, 'open-meteo'));
    },
  );
});

describe('hours that contradict the others', () => {
  it.each(partly)('by %s from %s are left out by name, and the rest is right', async (name, host) => {
    for (const other of HOSTS) fake.setFault(other, other === host ? name : 'status-500');
    const forecast = expectOk(await getForecast(TONIGHT, deps()));
    expectRight(forecast);
    expect(forecast.by).toBe(host);
    expect(forecast.leftOut.length).toBeGreaterThan(0);
    for (const { at, code } of forecast.leftOut) {
      expect(code).toBe(CODES[name]);
      const filled = forecast.hours.find((hour) => hour.at === at);
      expect(filled?.origin).toBe('filled');
    }
    const told = forecast.hours.filter(({ origin }) => origin === 'filled').map(({ at }) => at);
    expect(told).toEqual(forecast.leftOut.map(({ at }) => at));
  });

  it('are three for three hours that overlap', async () => {
    for (const host of ['open-meteo', 'met-norway'] as const) fake.setFault(host, 'status-500');
    fake.setFault('weather-gov', 'overlapping-intervals');
    const { leftOut } = expectOk(await getForecast(TONIGHT, deps()));
    expect(leftOut.map(({ at }) => (at - EVENING) / HOUR_MS)).toHaveLength(3);
  });
});

describe('an answer that is not modified', () => {
  it('is an old forecast after a day of that', async () => {
    fake.setFault('open-meteo', 'status-500');
    const clock = handClock();
    const before = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now });
    expect(expectOk(await getForecast(TONIGHT, before)).by).toBe('met-norway');
    fake.setFault('weather-gov', 'status-500');
    clock.forward(25 * HOUR_MS);
    // The fake's clock stands still, and so does its Last-Modified.
    expect(await getForecast({ ...TONIGHT, from: instant(EVENING + 25 * HOUR_MS) }, before)).toMatchObject({
      ok: false,
      reason: { tries: expect.arrayContaining([{ source: 'met-norway', problem: { code: 'old-issue' } }]) },
    });
  });
});

describe('an ensemble for another place', () => {
  it('is no spread for this one', async () => {
    const elsewhere: typeof fetch = async (input, init) => {
      const response = await fetch(input, init);
      if (!String(input).includes('ensemble')) return response;
      // The fake's own answer.
      const json = (await response.json()) as object;
      return Response.json({ ...json, latitude: 28.8 });
    };
    const forecast = expectOk(await getForecast(TONIGHT, { ...deps(), fetch: elsewhere }));
    expectRight(forecast);
    expect(forecast.by).toBe('open-meteo');
    expect(forecast.hours.every(({ spread }) => spread === null)).toBe(true);
  });
});
