import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { isoUtc, readInstant } from '@/lib/time/zone';
import { readSettings } from '@/lib/weather/environment';
import { address, coordinate } from '@/lib/weather/request/address';
import { createBoundedCache } from '@/lib/weather/request/bounded-cache';
import { afterAskedRest, afterFailure, HEALTHY, isResting } from '@/lib/weather/request/breaker';
import { quietUntil } from '@/lib/weather/request/retry-after';
import { createSingleFlight } from '@/lib/weather/request/single-flight';
import { weatherFixture } from '@/tests/support/weather-fixture';

const at = (iso: string) => expectOk(readInstant(iso));
const NOW = at('2027-01-16T22:10:20Z');

describe('the silence a service asks for', () => {
  it.each([
    ['120', '2027-01-16T22:12:20Z'],
    ['0', '2027-01-16T22:10:20Z'],
    ['Sat, 16 Jan 2027 22:30:00 GMT', '2027-01-16T22:30:00Z'],
    ['Sat, 16 Jan 2027 20:00:00 GMT', '2027-01-16T22:10:20Z'],
    ['3600', '2027-01-16T23:10:20Z'],
    ['999999999', '2027-01-16T23:10:20Z'],
    ['99999999999999999999', '2027-01-16T23:10:20Z'],
    ['Sun, 17 Jan 2027 22:10:00 GMT', '2027-01-16T23:10:20Z'],
    ['soon', '2027-01-16T22:11:20Z'],
  ])('by Retry-After %j lasts until %s', (header, until) =>
    expect(isoUtc(quietUntil(header, '', NOW))).toBe(until),
  );

  // Reasons as Open-Meteo words them: tests/fixtures/weather/error-bodies.json, from its RateLimiter.swift.
  it.each([
    ['open-meteo 429 minute (source RateLimiter.swift)', '2027-01-16T22:11:00Z'],
    ['open-meteo 429 hour', '2027-01-16T23:00:00Z'],
    ['open-meteo 429 day', '2027-01-17T00:00:00Z'],
    ['open-meteo 429 concurrency', '2027-01-16T22:10:21Z'],
  ])('by the words of %s lasts until %s', (name, until) => {
    // A table of bodies by name.
    const bodies = weatherFixture('error-bodies.json') as Record<string, { body: object }>;
    expect(isoUtc(quietUntil(null, JSON.stringify(bodies[name]!.body), NOW))).toBe(until);
  });
});

describe('a breaker', () => {
  const failures = (count: number) =>
    Array.from({ length: count }).reduce<typeof HEALTHY>((breaker) => afterFailure(breaker, NOW), HEALTHY);

  it.each([
    [1, null],
    [2, null],
    [3, 30],
    [4, 60],
    [6, 240],
    [7, 300],
    [50, 300],
  ])('after %d failures in a row rests %j s', (count, seconds) => {
    const { restingUntil } = failures(count);
    expect(restingUntil === null ? null : (restingUntil - NOW) / 1000).toBe(seconds);
  });

  it('rests until just before the moment, not at it', () => {
    const breaker = afterAskedRest(HEALTHY, instant(NOW + 1000));
    expect(isResting(breaker, instant(NOW + 999))).toBe(true);
    expect(isResting(breaker, instant(NOW + 1000))).toBe(false);
    expect(isResting(HEALTHY, NOW)).toBe(false);
  });
});

describe('a bounded cache', () => {
  it('forgets the one used longest ago', () => {
    const cache = createBoundedCache<number>(2);
    cache.set('a', 1);
    cache.set('b', 2);
    cache.get('a');
    cache.set('c', 3);
    expect([cache.get('a'), cache.get('b'), cache.get('c')]).toEqual([1, undefined, 3]);
  });

  it('never grows beyond its bound', () => {
    fc.assert(
      fc.property(fc.array(fc.string()), fc.integer({ min: 1, max: 5 }), (keys, most) => {
        const cache = createBoundedCache<string>(most);
        for (const key of keys) {
          cache.set(key, key);
          expect(cache.get(key)).toBe(key);
        }
        expect(cache.size()).toBe(Math.min(new Set(keys).size, most));
      }),
    );
  });
});

describe('a single flight', () => {
  it('runs one job for all who ask at once, and a new one for who asks later', async () => {
    const flight = createSingleFlight<number>();
    let runs = 0;
    const job = async () => {
      runs += 1;
      await Promise.resolve();
      return runs;
    };
    expect(await Promise.all([flight.run('a', job), flight.run('a', job), flight.run('b', job)])).toEqual([
      2, 2, 2,
    ]);
    expect(await flight.run('a', job)).toBe(3);
  });

  it('forgets a job that broke', async () => {
    const flight = createSingleFlight<number>();
    await expect(flight.run('a', () => Promise.reject(new Error('broke')))).rejects.toThrow('broke');
    expect(await flight.run('a', async () => 7)).toBe(7);
  });
});

describe('an address', () => {
  it('has coordinates of at most four decimals, no trailing zeros and no minus zero', () => {
    expect([46.790_04, -92.100_06, 30, -0.000_01, 1e-9].map(coordinate)).toEqual([
      '46.79',
      '-92.1001',
      '30',
      '0',
      '0',
    ]);
  });

  it('cannot be bent by what is put into it', () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        const url = new URL(address('https://example.org/base', '/v1/search', { name, count: '20' }));
        expect(url.origin + url.pathname).toBe('https://example.org/base/v1/search');
        expect([...url.searchParams.keys()]).toEqual(['name', 'count']);
        expect(url.searchParams.get('name')).toBe(name.toWellFormed());
      }),
    );
  });
});

describe('the settings', () => {
  it('are the public hosts where nothing is set, and no contact', () => {
    const settings = readSettings({});
    expect(settings.baseUrls.openMeteo).toBe('https://api.open-meteo.com');
    expect(settings.baseUrls.metNorway).toBe('https://api.met.no');
    expect(settings.contact).toBeNull();
  });

  it('take a base with a path and drop the slash at its end', () => {
    expect(readSettings({ NWS_BASE_URL: 'http://127.0.0.1:4010/weather-gov/' }).baseUrls.weatherGov).toBe(
      'http://127.0.0.1:4010/weather-gov',
    );
  });

  it.each(['ftp://example.org', 'example.org', 'file:///etc/passwd', 'javascript:alert(1)'])(
    'hold %j for no web address',
    (text) => expect(readSettings({ OPEN_METEO_BASE_URL: text }).baseUrls.openMeteo).toBeNull(),
  );

  it.each(['a b@example.org', 'x\r\nx-evil: 1@', '', 'nobody'])('hold %j for no contact', (text) =>
    expect(readSettings({ WEATHER_CONTACT: text }).contact).toBeNull(),
  );

  it.each([
    [{}, 1],
    [{ OPEN_METEO_API_KEY: 'abc-1' }, 8],
    [{ OPEN_METEO_CONCURRENCY: '3' }, 3],
    [{ OPEN_METEO_API_KEY: 'abc-1', OPEN_METEO_CONCURRENCY: '20' }, 20],
    [{ OPEN_METEO_CONCURRENCY: '9999' }, 64],
    [{ OPEN_METEO_CONCURRENCY: '0' }, 1],
    [{ OPEN_METEO_CONCURRENCY: '-2' }, 1],
    [{ OPEN_METEO_CONCURRENCY: 'many' }, 1],
  ])('%j let %d requests to Open-Meteo be under way at once', (environment, count) =>
    expect(readSettings(environment).concurrency.openMeteo).toBe(count),
  );

  it('read a contact and a key', () => {
    expect(readSettings({ WEATHER_CONTACT: 'tech@example.org', OPEN_METEO_API_KEY: 'abc-1' })).toMatchObject({
      contact: 'tech@example.org',
      openMeteoKey: 'abc-1',
    });
  });
});
