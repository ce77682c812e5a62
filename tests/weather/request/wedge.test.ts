import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { metre } from '@/lib/units/quantity';
import { getForecast } from '@/lib/weather/get-forecast';
import { getHistory } from '@/lib/weather/get-history';
import { getPlaces } from '@/lib/weather/get-places';
import { ask } from '@/lib/weather/request/ask';
import { TIMINGS } from '@/lib/weather/request/timings';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';

const SITE = { latitude: 46.79, longitude: -92.1, elevation: metre(280) };
const WINTERS = { ...SITE, months: [1], years: 2, ridingHours: { first: 18, last: 23 } };
const TONIGHT = { ...SITE, from: EVENING, hours: 12 };
/** Short, so that a wedge is told soon; the order of sizes is that of earnest. */
const SHORT = {
  attemptMs: 120,
  totalMs: 400,
  hedgeMs: 60,
  staleGraceMs: 200,
  spreadGraceMs: 50,
  retryLeastMs: 2,
};

const fake = fakeWeatherForTests(() => EVENING);
afterEach(() => vi.useRealTimers());

/** A response whose reader never says anything and hears no signal. */
const wedgedResponse = (): Response =>
  new Response(new ReadableStream({ pull: () => new Promise(() => undefined) }), { status: 200 });

/** Ways in which a network can hold somebody for ever. */
const WEDGES: Readonly<Record<string, typeof fetch>> = {
  'a body whose reader never settles': async () => wedgedResponse(),
  'a reader that never settles, even when it is cancelled': async () => {
    const reader = { read: () => new Promise(() => undefined), cancel: () => new Promise(() => undefined) };
    // Of a response only these are read.
    return { status: 200, type: 'basic', headers: new Headers(), body: { getReader: () => reader } } as never;
  },
  'a fetch that hears no signal': () => new Promise(() => undefined),
};

describe.each(Object.entries(WEDGES))('%s', (_name, wedged) => {
  it('is a timeout, and no longer than that', async () => {
    vi.useFakeTimers();
    const deps = weatherDeps({ fetch: wedged, timings: TIMINGS });
    const deadline = new AbortController().signal;
    const answer = ask({ host: 'openMeteo', url: 'https://weather.example', deadline }, deps);
    await vi.advanceTimersByTimeAsync(TIMINGS.attemptMs);
    expect(await answer).toEqual({ ok: false, reason: { code: 'timeout' } });
  });

  it.each([
    ['a forecast', (deps: WeatherDeps) => getForecast(TONIGHT, deps)],
    ['places', (deps: WeatherDeps) => getPlaces('pine', deps)],
    ['past winters', (deps: WeatherDeps) => getHistory(WINTERS, deps)],
  ])('makes nobody wait longer than nine seconds for %s, however many ask', async (_what, question) => {
    vi.useFakeTimers();
    const deps = weatherDeps({ fetch: wedged, timings: TIMINGS });
    const answers = Promise.all(
      Array.from({ length: 5 }, (_, i) => question({ ...deps, caller: `caller ${i}` })),
    );
    let settled = false;
    void answers.then(() => {
      settled = true;
    });
    await vi.advanceTimersByTimeAsync(9000);
    expect(settled).toBe(true);
    for (const answer of await answers) expect(answer.ok).toBe(false);
  });

  it('is over when it is over: all who ask then get their answer', async () => {
    const clock = handClock();
    let healed = false;
    const deps = weatherDeps({
      fetch: (input, init) => (healed ? fetch(input, init) : wedged(input, init)),
      environment: fake.environment,
      now: clock.now,
      timings: SHORT,
    });
    const during = await Promise.all([
      getHistory(WINTERS, deps),
      getPlaces('pine', deps),
      getForecast(TONIGHT, deps),
    ]);
    expect(during.map(({ ok }) => ok)).toEqual([false, false, false]);
    healed = true;
    // The rest of a service that failed three times in a row.
    clock.forward(30_000);
    const patient = { ...deps, timings: { ...TIMINGS, spreadGraceMs: 0 } };
    const after = await Promise.all([
      getHistory(WINTERS, patient),
      getPlaces('pine', patient),
      getForecast(TONIGHT, patient),
    ]);
    expect(after.map(({ ok }) => ok)).toEqual([true, true, true]);
  });
});

describe('a service that says gzip and sends plain text', () => {
  it('makes way for the next one, and is asked again when it has healed', async () => {
    const clock = handClock();
    const deps = weatherDeps({
      environment: fake.environment,
      now: clock.now,
      timings: { ...TIMINGS, attemptMs: 500, spreadGraceMs: 0 },
    });
    fake.setFault('open-meteo', 'not-gzip');
    expect(await getForecast(TONIGHT, deps)).toMatchObject({
      value: { by: 'met-norway', tries: [{ source: 'open-meteo' }] },
    });
    fake.setFault('open-meteo', 'none');
    clock.forward(30_000);
    expect(await getForecast({ ...TONIGHT, latitude: 45 }, { ...deps, timings: TIMINGS })).toMatchObject({
      value: { by: 'open-meteo', tries: [] },
    });
  });
});

describe('a real server that says gzip and sends plain text', () => {
  const servers: Server[] = [];
  afterEach(() => {
    for (const server of servers.splice(0)) {
      server.close();
      server.closeAllConnections();
    }
  });

  async function lyingServer(encoding: string, end: boolean): Promise<string> {
    const server = createServer((_request, response) => {
      response.writeHead(200, { 'content-type': 'application/json', 'content-encoding': encoding });
      response.write('{"results":[]}');
      if (end) response.end();
    });
    servers.push(server);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    // A server listening on a port has an address object.
    return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  }

  it.each([
    ['gzip', true],
    ['gzip', false],
    ['deflate', true],
    ['br', true],
    ['br', false],
  ])(
    '(%s, ended: %s) wedges nothing: past winters fail, and the next places are there',
    async (encoding, end) => {
      const archive = await lyingServer(encoding, end);
      const deps = weatherDeps({
        environment: () => ({ ...fake.environment(), OPEN_METEO_ARCHIVE_BASE_URL: archive }),
        timings: { ...SHORT, attemptMs: 300, totalMs: 1500 },
      });
      const winters = await getHistory(WINTERS, deps);
      expect(winters).toMatchObject({ ok: false, reason: { code: 'lookup-failed' } });
      expect((await getPlaces('pine', { ...deps, timings: TIMINGS })).ok).toBe(true);
    },
  );
});
