import { afterAll, describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { metre } from '@/lib/units/quantity';
import type { Forecast } from '@/lib/weather/forecast';
import { getForecast } from '@/lib/weather/get-forecast';
import { getHistory } from '@/lib/weather/get-history';
import { getPlaces } from '@/lib/weather/get-places';
import { TIMINGS, type Timings } from '@/lib/weather/request/timings';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { weatherAt } from '@/tests/support/fake-weather/weather';
import { EVENING, weatherDeps } from '@/tests/support/weather-deps';

const SEED = 7;
/** What is tried here is who gets what, not how fast this machine is: nobody is given up, and nobody gets company. */
const PATIENT: Timings = {
  ...TIMINGS,
  attemptMs: 20_000,
  hedgeMs: 20_000,
  totalMs: 40_000,
  spreadGraceMs: 0,
};
const fake = fakeWeatherForTests(() => EVENING, SEED);

let over = false;
afterAll(() => {
  over = true;
});
/** Extras still wait for their turn when a test ends: none of them may reach the files that run after this one. */
const fetchHere: typeof fetch = (input, init) =>
  over ? Promise.reject(new TypeError('the test is over')) : fetch(input, init);
const depsHere = (given: Parameters<typeof weatherDeps>[0]) => ({ ...weatherDeps(given), fetch: fetchHere });
const TONIGHT = { elevation: metre(280), from: EVENING, hours: 12 };
const places = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ ...TONIGHT, latitude: 40 + i / 50, longitude: -100 + i / 25 }));
const callsTo = (host: string) => fake.calls().filter((call) => call.startsWith(`${host} `));
const sitesIn = (call: string) =>
  (new URLSearchParams(call.split('?')[1]).get('latitude') ?? '').split(',').length;

/** Each place has its own air: the invented truth there, give or take rounding. */
function expectOwn(forecast: Forecast): void {
  for (const hour of forecast.hours) {
    const truth = weatherAt(SEED, hour.at, { ...forecast.place, elevationM: 280 });
    expect(Math.abs(hour.temperature - 273.15 - truth.temperatureC)).toBeLessThan(0.5);
    expect(Math.abs(hour.pressure / 100 - truth.stationHpa)).toBeLessThan(0.6);
  }
}

describe('three hundred new places at once', () => {
  it.each([
    ['with a contact', {}],
    ['with the first service alone', { WEATHER_CONTACT: '', NWS_BASE_URL: 'nowhere' }],
  ])('all have a real pressure, each its own, in a few requests: %s', async (_name, more) => {
    // Of this test: what it leaves under way must not reach the next one's.
    const { environment } = fake;
    const deps = depsHere({ environment: () => ({ ...environment(), ...more }), timings: PATIENT });
    const forecasts = (await Promise.all(places(300).map((place) => getForecast(place, deps)))).map(expectOk);
    const real = forecasts.filter(({ hours }) => hours.every((hour) => hour.pressureFrom !== 'standard'));
    expect(real.length).toBeGreaterThanOrEqual(290);
    for (const forecast of real) expectOwn(forecast);
    expect(callsTo('open-meteo').length).toBeLessThan(20);
    // The spread of an ensemble is an extra: no forecast waits for one.
    const order = fake.calls().map((call) => call.split(' ')[0]!);
    expect(order.slice(0, order.lastIndexOf('open-meteo'))).not.toContain('open-meteo-ensemble');
    expect(Math.max(...callsTo('open-meteo').map(sitesIn))).toBeLessThanOrEqual(50);
  });

  it('do not mix places with a height and places without', async () => {
    const deps = depsHere({ environment: fake.environment, timings: PATIENT });
    const asked = places(20).map((place, i) => (i % 2 === 0 ? place : { ...place, elevation: null }));
    const forecasts = (await Promise.all(asked.map((place) => getForecast(place, deps)))).map(expectOk);
    expect(forecasts.map(({ elevationFrom }) => elevationFrom)).toEqual(
      asked.map(({ elevation }) => (elevation === null ? 'service' : 'given')),
    );
    for (const call of callsTo('open-meteo')) {
      const heights = new URLSearchParams(call.split('?')[1]).get('elevation');
      if (heights !== null) expect(heights.split(',')).toHaveLength(sitesIn(call));
    }
  });
});

describe('places that go in one request', () => {
  it('are asked for in halves where the service does not like one of them', async () => {
    const picky: typeof fetch = async (input, init) => {
      const latitudes = new URL(String(input)).searchParams.get('latitude')?.split(',') ?? [];
      return latitudes.includes('40.2')
        ? Response.json({ error: true, reason: 'No data is available for this location' }, { status: 400 })
        : fetchHere(input, init);
    };
    const environment = () => ({ ...fake.environment(), WEATHER_CONTACT: '', NWS_BASE_URL: 'nowhere' });
    const deps = { ...depsHere({ environment, timings: PATIENT }), fetch: picky };
    const answers = await Promise.all(places(16).map((place) => getForecast(place, deps)));
    expect(answers.map(({ ok }) => ok)).toEqual(places(16).map(({ latitude }) => latitude !== 40.2));
  });

  it('get nobody else their air where the answers come in another order', async () => {
    const shuffled: typeof fetch = async (input, init) => {
      const json: unknown = await (await fetchHere(input, init)).json();
      return Response.json(Array.isArray(json) ? json.toReversed() : json);
    };
    const environment = () => ({ ...fake.environment(), WEATHER_CONTACT: '', NWS_BASE_URL: 'nowhere' });
    const deps = { ...depsHere({ environment, timings: PATIENT }), fetch: shuffled };
    // Two hundred kilometres from one to the next.
    const far = places(8).map((place, i) => ({ ...place, latitude: 30 + 2 * i }));
    const answers = await Promise.all(far.map((place) => getForecast(place, deps)));
    for (const answer of answers)
      if (answer.ok) expectOwn(answer.value);
      else expect(answer.reason).toMatchObject({ tries: [{ problem: { code: 'other-place' } }, {}, {}] });
    expect(answers.filter(({ ok }) => !ok).length).toBeGreaterThanOrEqual(6);
  });
});

describe('a flood from one caller', () => {
  it('does not keep another from a forecast, a place or past winters', async () => {
    const slow: typeof fetch = async (input, init) => {
      await new Promise((resolve) => setTimeout(resolve, 20));
      return fetchHere(input, init);
    };
    const deps = {
      ...depsHere({ environment: fake.environment, timings: PATIENT }),
      fetch: slow,
      caller: 'flood',
    };
    const winters = {
      latitude: 46.79,
      longitude: -92.1,
      months: [1],
      years: 1,
      ridingHours: { first: 18, last: 23 },
    };
    const flood = [
      ...places(60).map((place) => getForecast(place, deps)),
      ...places(60).map((_, i) => getPlaces(`place ${i}`, deps)),
    ];
    let floodDone = false;
    const whole = Promise.all(flood).then(() => {
      floodDone = true;
    });
    const other = { ...deps, caller: 'other' };
    const answers = await Promise.all([
      getForecast({ ...TONIGHT, latitude: 60, longitude: -90 }, other),
      getPlaces('pine', other),
      getHistory({ ...winters, elevation: metre(280) }, other),
    ]);
    expect(answers.map(({ ok }) => ok)).toEqual([true, true, true]);
    expect(answers[0]).toMatchObject({ value: { by: 'open-meteo' } });
    // The flood is still waiting: nobody else has to wait for its end.
    expect(floodDone).toBe(false);
    await whole;
  });
});
