import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { kelvinToCelsius } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { getElevations } from '@/lib/weather/get-elevations';
import { getHistory } from '@/lib/weather/get-history';
import { getPastAir } from '@/lib/weather/get-past-air';
import { getPlaces } from '@/lib/weather/get-places';
import { percentiles } from '@/lib/weather/percentiles';
import { monthRuns, pastStretches } from '@/lib/weather/stretches';
import { FAULTS } from '@/tests/support/fake-weather/faults';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { groundM, weatherAt } from '@/tests/support/fake-weather/weather';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';

const SITE = { latitude: 46.79, longitude: -92.1, elevation: metre(280) };
const SPOT = { ...SITE, elevationM: 280 };
const fake = fakeWeatherForTests(() => EVENING);

function fresh() {
  const clock = handClock();
  return {
    clock,
    deps: weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now }),
  };
}

const broken = FAULTS.filter(
  (fault) =>
    !['none', 'hang', 'slow-drip', 'nulls', 'no-pressure', 'wrong-units', 'not-a-number'].includes(fault),
);

describe('places of a name', () => {
  it('come with what tells them apart, and with null for what is not known', async () => {
    expect(await getPlaces('pine', fresh().deps)).toMatchObject({
      ok: true,
      value: [
        {
          name: 'Pine Hollow',
          region: 'North County, Minnesota, United States',
          elevation: 280,
          zone: 'America/Chicago',
        },
        { name: 'Pine Lake', region: 'Wisconsin, United States', elevation: null },
      ],
    });
  });

  it('are none for a name nobody bears: an empty list, not a failure', async () => {
    expect(await getPlaces('Nowhere-at-all', fresh().deps)).toEqual({ ok: true, value: [] });
  });

  it.each(['', ' ', 'x', ' \u0000\n a '])('need at least two letters: %j', async (text) => {
    expect(await getPlaces(text, fresh().deps)).toEqual({ ok: false, reason: { code: 'name-too-short' } });
    expect(fake.calls()).toEqual([]);
  });

  it('are asked for with a cleaned name that cannot bend the address', async () => {
    await getPlaces('  Pine\u0000  &count=9999#/../x ', fresh().deps);
    expect(fake.calls()).toEqual([
      'open-meteo-geocoding /v1/search?name=Pine+%26count%3D9999%23%2F..%2Fx&count=20&language=en&format=json',
    ]);
  });

  it('are remembered, in whatever case they are asked for', async () => {
    const { deps } = fresh();
    await getPlaces('Pine', deps);
    await getPlaces('pine', deps);
    expect(fake.calls()).toHaveLength(1);
  });

  it.each(broken)('fail with a reason by %s', async (fault) => {
    fake.setFault('open-meteo-geocoding', fault);
    const result = await getPlaces('pine', fresh().deps);
    // An empty object is how the service says that there is no match.
    if (fault === 'empty-object') expect(result).toEqual({ ok: true, value: [] });
    else
      expect(result).toMatchObject({
        ok: false,
        reason: { code: 'lookup-failed', retryAfterSeconds: expect.any(Number) },
      });
  });
});

describe('the height of the ground', () => {
  it('is that of the answer, and is asked for once', async () => {
    const { deps } = fresh();
    expect(await getElevations([SITE], deps)).toEqual({ ok: true, value: [groundM(46.79, -92.1)] });
    await getElevations([SITE], deps);
    expect(fake.calls()).toEqual(['open-meteo /v1/elevation?latitude=46.79&longitude=-92.1']);
  });

  it('is refused where it cannot be', async () => {
    const odd: typeof fetch = async () => Response.json({ elevation: [9_999_999] });
    expect(await getElevations([SITE], { ...fresh().deps, fetch: odd })).toMatchObject({
      reason: { code: 'lookup-failed', problem: { code: 'implausible' } },
    });
  });

  it('is not asked for off the map', async () => {
    expect(await getElevations([{ latitude: 95, longitude: 0 }], fresh().deps)).toMatchObject({
      reason: { code: 'not-a-place' },
    });
  });
});

describe('the air at a past moment', () => {
  it('lies between the two hours around it', async () => {
    const at = instant(EVENING - 20 * 24 * HOUR_MS + 20 * 60_000);
    const air = expectOk(await getPastAir({ ...SITE, at }, fresh().deps));
    const [before, after] = [Math.floor(at / HOUR_MS) * HOUR_MS, Math.ceil(at / HOUR_MS) * HOUR_MS].map((t) =>
      weatherAt(7, t, SPOT),
    );
    const share = (at % HOUR_MS) / HOUR_MS;
    const truth = before!.temperatureC * (1 - share) + after!.temperatureC * share;
    expect(Math.abs(kelvinToCelsius(air.temperature) - truth)).toBeLessThan(0.051);
    expect(air).toMatchObject({ at, elevation: 280, pressureFrom: 'station' });
  });

  it('comes from the forecast host for the last three months and from the archive before', async () => {
    const { deps } = fresh();
    await getPastAir({ ...SITE, at: instant(EVENING - 89 * 24 * HOUR_MS) }, deps);
    await getPastAir({ ...SITE, at: instant(EVENING - 91 * 24 * HOUR_MS) }, deps);
    expect(fake.calls().map((call) => call.split('?')[0])).toEqual([
      'open-meteo /v1/forecast',
      'open-meteo-archive /v1/archive',
    ]);
  });

  it.each([
    ['tomorrow', EVENING + 24 * HOUR_MS],
    ['in 1931', Date.UTC(1931, 0, 16)],
  ])('is not there %s', async (_when, at) => {
    expect(await getPastAir({ ...SITE, at: instant(at) }, fresh().deps)).toEqual({
      ok: false,
      reason: { code: 'not-in-archive', at },
    });
    expect(fake.calls()).toEqual([]);
  });

  it('is no number where the service has none', async () => {
    fake.setFault('open-meteo', 'nulls');
    expect(await getPastAir({ ...SITE, at: instant(EVENING - 24 * HOUR_MS) }, fresh().deps)).toMatchObject({
      reason: { code: 'lookup-failed', problem: { code: 'no-hours' } },
    });
  });
});

describe('months of the year in stretches', () => {
  it.each([
    [[12, 1, 2], [{ first: 12, length: 3 }]],
    [[1], [{ first: 1, length: 1 }]],
    [
      [11, 12, 3],
      [
        { first: 3, length: 1 },
        { first: 11, length: 2 },
      ],
    ],
    [[12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], [{ first: 1, length: 12 }]],
  ])('%j', (months, runs) => expect(monthRuns(months)).toEqual(runs));

  it('are whole and in the archive: in mid January the winter under way does not count', () => {
    expect(pastStretches([12, 1, 2], 2, EVENING)).toEqual([
      { from: '2024-12-01', to: '2025-02-28' },
      { from: '2025-12-01', to: '2026-02-28' },
    ]);
    expect(pastStretches([12], 2, EVENING).at(-1)).toEqual({ from: '2026-12-01', to: '2026-12-31' });
  });

  it('know leap years', () => {
    expect(pastStretches([2], 3, EVENING)[0]).toEqual({ from: '2024-02-01', to: '2024-02-29' });
  });
});

describe('percentiles', () => {
  it('are those of definition 7: of 1 to 10 they are 1.9, 5.5 and 9.1', () => {
    // R documentation, quantile(1:10, c(.1, .5, .9)), type 7: 1.9 5.5 9.1 (from memory; (n - 1) p + 1 by hand).
    const values = [10, 3, 1, 7, 9, 2, 8, 4, 6, 5];
    expect(percentiles(values, (v) => v)).toEqual({
      p10: expect.closeTo(1.9, 12),
      p50: 5.5,
      p90: expect.closeTo(9.1, 12),
    });
    expect(values[0]).toBe(10);
  });
});

describe('past winters', () => {
  const question = { ...SITE, months: [1, 12], years: 2, ridingHours: { first: 8, last: 20 } };

  it('give each month its riding hours on the clock of the place', async () => {
    const season = expectOk(await getHistory(question, fresh().deps));
    // December: two of 31 days; January the same; 12 hours a day each.
    expect(season.months.map(({ month, hours }) => [month, hours])).toEqual([
      [1, 31 * 12 * 2],
      [12, 31 * 12 * 2],
    ]);
    expect(season).toMatchObject({ zone: 'America/Chicago', elevation: 280 });
    expect(season.stretches.map(({ from }) => from)).toEqual(['2024-12-01', '2025-12-01']);
  });

  it('give the percentiles of the hours there were', async () => {
    const { months } = expectOk(await getHistory({ ...question, months: [1], years: 1 }, fresh().deps));
    const hours: number[] = [];
    for (let at = Date.UTC(2026, 0, 1); at < Date.UTC(2026, 1, 2); at += HOUR_MS) {
      // Minnesota keeps UTC-6 all January.
      const clock = new Date(at - 6 * HOUR_MS).getUTCHours();
      const month = new Date(at - 6 * HOUR_MS).getUTCMonth();
      if (month === 0 && clock >= 8 && clock < 20)
        hours.push(Number(weatherAt(7, at, SPOT).temperatureC.toFixed(1)));
    }
    const median = [...hours].sort((a, b) => a - b);
    expect(kelvinToCelsius(months[0]!.temperature.p50)).toBeCloseTo(
      (median[(hours.length - 2) / 2]! + median[hours.length / 2]!) / 2,
      1,
    );
    expect(months[0]!.temperature.p10).toBeLessThan(months[0]!.temperature.p50);
    expect(months[0]!.temperature.p90).toBeGreaterThan(months[0]!.temperature.p50);
    expect(months[0]!.pressure.p50 / 100).toBeGreaterThan(950);
  });

  it('are asked for in one request a winter, once', async () => {
    const { deps } = fresh();
    await Promise.all(Array.from({ length: 20 }, () => getHistory(question, deps)));
    expect(
      fake.calls().map((call) => /start_date=([\d-]+)&end_date=([\d-]+)/.exec(call)?.slice(1).join(' to ')),
    ).toEqual(['2024-12-01 to 2025-01-31', '2025-12-01 to 2026-01-31']);
  });

  it.each(['status-500', 'html', 'nulls', 'no-pressure', 'wrong-units', 'huge'] as const)(
    'fail with a reason by %s',
    async (fault) => {
      fake.setFault('open-meteo-archive', fault);
      expect(await getHistory(question, fresh().deps)).toMatchObject({
        ok: false,
        reason: { code: 'lookup-failed' },
      });
    },
  );
});
