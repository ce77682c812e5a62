import { afterEach, describe, expect, it, vi } from 'vitest';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, MINUTE_MS } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import type { Forecast } from '@/lib/weather/forecast';
import { getForecast } from '@/lib/weather/get-forecast';
import { TIMINGS } from '@/lib/weather/request/timings';
import { type BrokenAnswer, FAULTS, type Fault } from '@/tests/support/fake-weather/faults';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { weatherAt } from '@/tests/support/fake-weather/weather';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';

const SEED = 7;
const SITE = { latitude: 46.79, longitude: -92.1, elevation: metre(280) };
const TONIGHT = { ...SITE, from: EVENING, hours: 12 };

const fake = fakeWeatherForTests(() => EVENING, SEED);
const faults = FAULTS.filter((fault) => fault !== 'none');

/** What each fault is called when it is told. */
const CODES: Readonly<Record<Exclude<BrokenAnswer, 'none'>, string>> = {
  refused: 'unreachable',
  reset: 'unreachable',
  hang: 'timeout',
  'slow-drip': 'timeout',
  'half-body': 'unreachable',
  html: 'not-json',
  'empty-object': 'unexpected-shape',
  nulls: 'no-hours',
  'not-a-number': 'not-json',
  'status-500': 'bad-status',
  'status-429': 'rate-limited',
  huge: 'too-large',
  'wrong-units': 'wrong-units',
  'no-pressure': 'no-pressure',
  redirect: 'redirected',
};
const isSilent = (fault: Fault): boolean => fault === 'hang' || fault === 'slow-drip';

/**
 * No number is wrong: each temperature is the invented truth give or take what the fake services differ by (0.3 K and
 * whole °F, a grid cell a few kilometres off), each pressure is the true one within 0.6 hPa or marked as the standard
 * atmosphere and equal to it.
 */
function expectRight(forecast: Forecast): void {
  expect(forecast.hours.length).toBeGreaterThanOrEqual(12);
  for (const hour of forecast.hours) {
    const truth = weatherAt(SEED, hour.at, { ...SITE, elevationM: 280 });
    expect(Math.abs(hour.temperature - 273.15 - truth.temperatureC)).toBeLessThan(1);
    if (hour.pressureBy === 'standard-atmosphere') {
      expect(hour.pressureFrom).toBe('standard');
      expect(hour.pressure).toBe(standardPressure(metre(280)));
    } else expect(Math.abs(hour.pressure / 100 - truth.stationHpa)).toBeLessThan(0.6);
  }
}

describe('with the first service failing', () => {
  it.each(faults)('by %s, the next one answers, and both are named', async (fault) => {
    fake.setFault('open-meteo', fault);
    // Long enough that on a busy machine the second service answers before the third is asked too.
    const timings = isSilent(fault) ? { ...BRISK_TIMINGS, hedgeMs: 500 } : BRISK_TIMINGS;
    const deps = weatherDeps({ environment: fake.environment, timings });
    const forecast = expectOk(await getForecast(TONIGHT, deps));
    expectRight(forecast);
    expect(forecast).toMatchObject({ by: 'met-norway', freshness: 'fresh' });
    expect(
      forecast.hours.every((hour) => hour.pressureFrom === 'sea-level' && hour.pressureBy === 'met-norway'),
    ).toBe(true);
    const code = isSilent(fault) ? 'slow' : CODES[fault as keyof typeof CODES];
    expect(forecast.tries).toMatchObject([{ source: 'open-meteo', problem: { code } }]);
  });
});

describe.each(['met-norway', 'weather-gov'] as const)('with %s failing', (host) => {
  it.each(faults)('by %s, nobody notices: the first service is asked first', async (fault) => {
    fake.setFault(host, fault);
    const deps = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS });
    const forecast = expectOk(await getForecast(TONIGHT, deps));
    expectRight(forecast);
    expect(forecast).toMatchObject({ by: 'open-meteo', freshness: 'fresh', tries: [] });
  });
});

describe('with the ensemble failing', () => {
  it.each(faults)('by %s, the forecast comes without its spread', async (fault) => {
    fake.setFault('open-meteo-ensemble', fault);
    const timings = isSilent(fault) ? { ...BRISK_TIMINGS, spreadGraceMs: 50 } : BRISK_TIMINGS;
    const forecast = expectOk(
      await getForecast(TONIGHT, weatherDeps({ environment: fake.environment, timings })),
    );
    expectRight(forecast);
    expect(forecast.by).toBe('open-meteo');
    // Pressure is none of the ensemble's business.
    expect(forecast.hours.every((hour) => (hour.spread === null) === (fault !== 'no-pressure'))).toBe(true);
  });
});

describe('with all services failing and nothing in memory', () => {
  it.each(faults.filter((fault) => fault !== 'no-pressure'))(
    'by %s, each is named with its reason',
    async (fault) => {
      fake.setFault('all', fault);
      const timings = isSilent(fault)
        ? { ...BRISK_TIMINGS, attemptMs: 100, hedgeMs: 30, totalMs: 600 }
        : BRISK_TIMINGS;
      const result = await getForecast(TONIGHT, weatherDeps({ environment: fake.environment, timings }));
      const code = CODES[fault as keyof typeof CODES];
      expect(result).toMatchObject({
        ok: false,
        reason: {
          code: 'all-sources-failed',
          tries: [
            { source: 'open-meteo', problem: { code } },
            { source: 'met-norway', problem: { code } },
            { source: 'weather-gov', problem: { code } },
          ],
        },
      });
    },
  );

  it('by giving no pressure, the first one answers with the standard atmosphere, marked on every hour', async () => {
    fake.setFault('all', 'no-pressure');
    const deps = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS });
    const forecast = expectOk(await getForecast(TONIGHT, deps));
    expectRight(forecast);
    expect(forecast.by).toBe('open-meteo');
    expect(forecast.hours.every((hour) => hour.pressureBy === 'standard-atmosphere')).toBe(true);
    expect(forecast.tries).toEqual([
      { source: 'met-norway', problem: { code: 'no-pressure' } },
      { source: 'weather-gov', problem: { code: 'no-pressure' } },
    ]);
  });
});

describe('with all services failing and a copy twenty minutes old', () => {
  it.each(faults)(
    'by %s, the copy is served, labelled stale, with the time it was fetched',
    async (fault) => {
      const clock = handClock();
      const timings = isSilent(fault) ? { ...BRISK_TIMINGS, staleGraceMs: 100, totalMs: 300 } : BRISK_TIMINGS;
      const healthy = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now });
      const before = expectOk(await getForecast(TONIGHT, healthy));
      fake.setFault('all', fault);
      clock.forward(20 * MINUTE_MS);
      const forecast = expectOk(
        await getForecast(TONIGHT, { ...healthy, timings: { ...healthy.timings, ...timings } }),
      );
      expectRight(forecast);
      if (fault === 'no-pressure') {
        // New temperatures with the old copy's pressure beat the old copy.
        expect(forecast.freshness).toBe('fresh');
        expect(forecast.hours.every((hour) => hour.pressureBy === 'open-meteo')).toBe(true);
        return;
      }
      expect(forecast).toMatchObject({ by: 'open-meteo', freshness: 'stale' });
      expect(forecast.source.fetchedAt).toBe(EVENING);
      expect(forecast.hours).toEqual(before.hours);
      expect(forecast.tries.length).toBeGreaterThan(0);
    },
  );

  it('by silence for thirteen hours, the copy is too old and there is none', async () => {
    const clock = handClock();
    const deps = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now });
    expectOk(await getForecast(TONIGHT, deps));
    fake.setFault('all', 'status-500');
    clock.forward(13 * HOUR_MS);
    expect(await getForecast(TONIGHT, deps)).toMatchObject({
      ok: false,
      reason: { code: 'all-sources-failed' },
    });
  });
});

describe('with every service silent', () => {
  afterEach(() => vi.useRealTimers());

  /** A network that accepts everything and answers nothing, until it is told to stop. */
  const silence: typeof fetch = (_input, init) =>
    new Promise((_resolve, reject) => {
      init?.signal?.addEventListener('abort', () => reject(new DOMException('stopped', 'AbortError')));
    });

  it('the answer is there within nine seconds, in earnest timings', async () => {
    vi.useFakeTimers();
    let settled = false;
    const answer = getForecast(TONIGHT, weatherDeps({ fetch: silence, timings: TIMINGS })).finally(() => {
      settled = true;
    });
    await vi.advanceTimersByTimeAsync(7900);
    expect(settled).toBe(false);
    await vi.advanceTimersByTimeAsync(1000);
    expect(settled).toBe(true);
    expect(await answer).toMatchObject({ ok: false, reason: { code: 'all-sources-failed' } });
  });

  it('the last good copy is there within four seconds', async () => {
    const clock = handClock();
    const deps = weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now });
    expectOk(await getForecast(TONIGHT, deps));
    clock.forward(20 * MINUTE_MS);
    vi.useFakeTimers();
    const answer = getForecast(TONIGHT, { ...deps, fetch: silence, timings: TIMINGS });
    await vi.advanceTimersByTimeAsync(4000);
    expect(expectOk(await answer).freshness).toBe('stale');
    await vi.advanceTimersByTimeAsync(9000);
  });
});
