import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastAnswers } from '@/app/api/forecast/forecast-answers';
import { historyAnswer } from '@/app/api/history/history-answers';
import { placeAnswer } from '@/app/api/places/place-answers';
import { weatherDeps } from '@/tests/support/weather-deps';

/** The addresses this server may ask, and the paths under each. */
const ALLOWED: Readonly<Record<string, RegExp>> = {
  'api.open-meteo.com': /^\/v1\/(forecast|elevation)$/,
  'ensemble-api.open-meteo.com': /^\/v1\/ensemble$/,
  'geocoding-api.open-meteo.com': /^\/v1\/search$/,
  'archive-api.open-meteo.com': /^\/v1\/archive$/,
  'api.met.no': /^\/weatherapi\/locationforecast\/2\.0\/complete$/,
  'api.weather.gov': /^\/(points\/-?[\d.]+,-?[\d.]+|gridpoints\/[A-Z]{3}\/\d+,\d+)$/,
};
/** What a parameter may hold: numbers, days and words of ours; a place's name is the one free text. */
const PLAIN = /^[\w.,+: -]*$/;

type Asked = { readonly url: URL; readonly init: RequestInit | undefined };

/** Deps with a network that answers nothing and remembers what it was asked. */
function listening() {
  const asked: Asked[] = [];
  const deps = weatherDeps({
    fetch: (input, init) => {
      asked.push({ url: new URL(String(input)), init });
      return Promise.resolve(new Response('{}', { status: 404 }));
    },
    timings: { retryLeastMs: 0, retryMostMs: 1, hedgeMs: 1 },
  });
  return { asked, deps };
}

function strange({ url, init }: Asked): readonly string[] {
  const free = url.hostname.startsWith('geocoding') ? ['name'] : [];
  return [
    url.protocol === 'https:' && url.port === '' && url.username === '' ? '' : `where: ${url.origin}`,
    ALLOWED[url.hostname]?.test(url.pathname) ? '' : `what: ${url.hostname}${url.pathname}`,
    url.hash === '' ? '' : `fragment: ${url.hash}`,
    init?.redirect === 'manual' ? '' : 'follows redirects',
    init?.body === undefined && (init?.method ?? 'GET') === 'GET' ? '' : 'sends something',
    ...[...url.searchParams]
      .filter(([name, value]) => !free.includes(name) && !PLAIN.test(value))
      .map(([name, value]) => `parameter ${name}: ${value}`),
  ].filter((words) => words !== '');
}

const number = fc.oneof(
  fc.double({ min: -90, max: 90, noNaN: true, noDefaultInfinity: true }).map((n) => n.toFixed(5)),
  fc.constantFrom('46.79', '0', '-0', '90', '.5', '60.17'),
);
const hostile = fc.oneof(
  number,
  fc.string({ maxLength: 30, unit: 'binary' }),
  fc.constantFrom(
    'http://169.254.169.254/latest/meta-data',
    '//localhost:22/',
    '@127.0.0.1',
    '../../../etc/passwd',
    '%2e%2e%2f',
    '46.79#@evil.example',
    '46.79&elevation=nan',
    '46.79\r\nHost: evil.example',
    'file:///etc/passwd',
    '1e2',
    'NaN',
  ),
);
const query = (fields: Readonly<Record<string, fc.Arbitrary<string>>>) =>
  fc
    .record(fields, { requiredKeys: [] })
    .map(
      (given) => `?${new URLSearchParams(Object.entries(given).map(([name, value]) => [name, value ?? '']))}`,
    );

describe('what is asked of the weather services', () => {
  it('goes to the six hosts by https, to fixed paths, with nothing but numbers and words of ours', async () => {
    const { asked, deps } = listening();
    // A new memory for each question, lest a resting service stays unasked.
    const fresh = () => ({ ...deps, memory: weatherDeps().memory });
    const point = { lat: number, lon: number, elevation: fc.constantFrom('0', '1600') };
    const questions = fc.oneof(
      // Duluth: where the US service is asked too.
      fc.constant('?lat=46.79&lon=-92.1').map((search) => () => forecastAnswers(fresh())(search)),
      query({ ...point, hours: fc.constant('12') }).map((search) => () => forecastAnswers(fresh())(search)),
      query({ lat: hostile, lon: hostile, elevation: hostile, from: hostile, hours: hostile }).map(
        (search) => () => forecastAnswers(fresh())(search),
      ),
      query({ q: hostile }).map((search) => () => placeAnswer(search, fresh())),
      query({ lat: hostile, lon: number }).map((search) => () => placeAnswer(search, fresh())),
      query({ ...point, months: fc.constantFrom('12,1', '1'), years: hostile, hours: hostile }).map(
        (search) => () => historyAnswer(search, fresh()),
      ),
      query({ ...point, at: fc.oneof(hostile, fc.constant('2026-01-16T18:00:00Z')) }).map(
        (search) => () => historyAnswer(search, fresh()),
      ),
    );
    await fc.assert(
      fc.asyncProperty(questions, async (ask) => {
        await ask();
      }),
      { numRuns: 300, seed: 5 },
    );
    expect(asked.flatMap(strange)).toEqual([]);
    // The questions got through, but to the ensemble, which is asked only beside a good answer.
    const hosts = Object.keys(ALLOWED).filter((host) => !host.startsWith('ensemble'));
    expect([...new Set(asked.map(({ url }) => url.hostname))].sort()).toEqual(hosts.sort());
  });
});
