import { describe, expect, it } from 'vitest';
import { stationFromAltimeter } from '@/lib/air/pressure';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { checkObservation } from '@/lib/weather/checks/check-observation';
import { getObservations } from '@/lib/weather/get-observations';
import {
  observationFromJson,
  observationsJsonSchema,
  observationsToJson,
} from '@/lib/weather/observations-json';
import { adaptObservation } from '@/lib/weather/weather-gov/adapt-observation';
import { latestSchema } from '@/lib/weather/weather-gov/station-schema';
import { FAULTS } from '@/tests/support/fake-weather/faults';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { reasonFor, SPOILT_OBSERVATIONS } from '@/tests/support/fake-weather/spoilt-observations';
import { weatherAt } from '@/tests/support/fake-weather/weather';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';
import { weatherFixture } from '@/tests/support/weather-fixture';

const SITE = { latitude: 46.79, longitude: -92.1 };
const fake = fakeWeatherForTests(() => EVENING);

function fresh() {
  const clock = handClock();
  return {
    clock,
    deps: weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS, now: clock.now }),
  };
}

describe('Stations around a place', () => {
  it('tell what they observed, nearest first, and the far one is not asked', async () => {
    const { observations, leftOut } = expectOk(await getObservations(SITE, fresh().deps));
    expect(observations.map(({ name }) => name)).toEqual(['Fake Lake', 'Fake Field']);
    expect(leftOut).toEqual([]);
    for (const { at, place, elevation, temperature, altimeter } of observations) {
      const truth = weatherAt(7, at, { ...place, elevationM: elevation });
      expect(Math.abs(kelvinToCelsius(temperature) - truth.temperatureC)).toBeLessThan(0.06);
      const station = pascalToHectopascal(stationFromAltimeter(altimeter!, elevation));
      expect(Math.abs(station - truth.stationHpa)).toBeLessThan(0.25);
      expect(EVENING - at).toBe(15 * 60_000);
    }
  });

  it('are asked by addresses made from checked parts, and once in five minutes', async () => {
    const { deps, clock } = fresh();
    await getObservations(SITE, deps);
    const asked = fake.calls();
    expect(asked.slice(0, 2)).toEqual([
      'weather-gov /points/46.79,-92.1',
      'weather-gov /gridpoints/FAK/879,1368/stations',
    ]);
    expect(asked.slice(2).every((call) => /\/stations\/K\w{3}\/observations\/latest$/.test(call))).toBe(true);
    await getObservations(SITE, deps);
    expect(fake.calls()).toHaveLength(4);
    clock.forward(6 * 60_000);
    await getObservations(SITE, deps);
    // The cell and its stations are known.
    expect(fake.calls()).toHaveLength(6);
  });

  it('are not looked up outside the United States, where nobody is asked', async () => {
    const oslo = { latitude: 59.9, longitude: 10.7 };
    expect(await getObservations(oslo, fresh().deps)).toEqual({
      ok: false,
      reason: { code: 'no-stations-here' },
    });
    expect(fake.calls()).toEqual([]);
    const off = await getObservations({ latitude: 95, longitude: 0 }, fresh().deps);
    expect(off).toMatchObject({ reason: { code: 'not-a-place' } });
  });

  it('that answered before are told again when the service is out, but not for hours', async () => {
    const { deps, clock } = fresh();
    await getObservations(SITE, deps);
    fake.setFault('weather-gov', 'status-500');
    clock.forward(HOUR_MS);
    expect(expectOk(await getObservations(SITE, deps)).observations).toHaveLength(2);
    clock.forward(2 * HOUR_MS);
    const { observations, leftOut } = expectOk(await getObservations(SITE, deps));
    expect(observations).toEqual([]);
    expect(leftOut.map(({ code }) => code)).toEqual(['too-old', 'too-old']);
  });

  it('travel as JSON and back', async () => {
    const observed = expectOk(await getObservations(SITE, fresh().deps));
    const json = observationsJsonSchema.parse(observationsToJson(observed, SITE));
    expect(json.observations[0]!.distanceM).toBeGreaterThan(5_000);
    for (const [i, each] of json.observations.map(observationFromJson).entries()) {
      const { temperature, altimeter, ...rest } = observed.observations[i]!;
      expect(each).toMatchObject({ station: rest.station, at: rest.at, elevation: rest.elevation });
      expect(each.temperature).toBeCloseTo(temperature, 2);
      expect(each.altimeter).toBeCloseTo(altimeter!, 0);
    }
  });
});

describe('An observation that contradicts itself', () => {
  it.each(SPOILT_OBSERVATIONS)('is left out by name: %s', async (fault) => {
    fake.setFault('weather-gov', fault);
    const { observations, leftOut } = expectOk(await getObservations(SITE, fresh().deps));
    expect(observations).toEqual([]);
    expect(leftOut.map(({ code }) => code)).toEqual([reasonFor(fault), reasonFor(fault)]);
  });
});

describe('A service with faults', () => {
  const broken = FAULTS.filter((fault) => fault !== 'none');
  it.each([...broken, 'not-gzip' as const])('gives nothing wrong and nothing thrown: %s', async (fault) => {
    fake.setFault('weather-gov', fault);
    const started = performance.now();
    const answer = await getObservations(SITE, fresh().deps);
    expect(performance.now() - started).toBeLessThan(9000);
    if (answer.ok) {
      // Nothing in the answer was touched by these.
      expect(['nulls', 'no-pressure', 'slow-drip', 'not-a-number', 'wrong-units']).toContain(fault);
      for (const { altimeter } of answer.value.observations) expect(altimeter).toBeGreaterThan(90_000);
    } else
      expect(answer.reason).toMatchObject({ code: 'lookup-failed', retryAfterSeconds: expect.any(Number) });
  });
});

describe('An observation as recorded', () => {
  const wire = latestSchema.parse(weatherFixture('nws-observation-latest-KFLL.json'));
  const station = {
    id: 'KFLL',
    name: 'Fort Lauderdale',
    place: { latitude: 26.07, longitude: -80.15 },
    elevation: metre(3),
  };
  const told = expectOk(adaptObservation({ ...wire.properties, geometry: wire.geometry }, station));

  it('is good', () => {
    const now = instant(Date.parse('2022-03-03T00:10:00Z'));
    expect(expectOk(checkObservation(told, { station, now }))).toMatchObject({
      station: 'KFLL',
      altimeter: 101_860,
      elevation: 3,
    });
  });

  it('is too old a day later', () => {
    const now = instant(Date.parse('2022-03-04T00:10:00Z'));
    expect(checkObservation(told, { station, now })).toEqual({ ok: false, reason: { code: 'too-old' } });
  });
});
