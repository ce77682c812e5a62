import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import { isoUtc, readInstant } from '@/lib/time/zone';
import { kelvinToCelsius } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { completeHours } from '@/lib/weather/complete-hours';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import { adaptWeatherGov } from '@/lib/weather/weather-gov/adapt';
import { durationMs, readInterval } from '@/lib/weather/weather-gov/interval';
import { weatherGovGridSchema, weatherGovPointSchema } from '@/lib/weather/weather-gov/schema';
import { weatherFixture } from '@/tests/support/weather-fixture';

const read = (json: unknown): ServiceAnswer =>
  expectOk(adaptWeatherGov(expectOk(parseAnswer(weatherGovGridSchema, json))));

function hourAt(answer: ServiceAnswer, iso: string): ServiceHour {
  const at = expectOk(readInstant(iso));
  const hour = answer.hours.find((candidate) => candidate.at === at);
  if (hour === undefined) throw new Error(`no hour at ${iso}`);
  return hour;
}

// Values below were read by eye from the recorded answers; where each comes from: tests/fixtures/weather/SOURCES.md.
describe("the US service's recorded grid for Tallahassee", () => {
  const answer = read(weatherFixture('nws-gridpoint-TAE-58-65-raw.json'));

  it('says when it was made and how high its ground is', () => {
    expect(isoUtc(answer.issuedAt!)).toBe('2022-02-04T03:15:41Z');
    expect(answer.elevation).toBeCloseTo(3.9624, 9);
  });

  it('begins with the interval that began before now, at 73 °F', () => {
    expect(isoUtc(answer.hours[0]!.at)).toBe('2022-02-03T21:00:00Z');
    expect(kelvinToCelsius(answer.hours[0]!.temperature!)).toBeCloseTo(22.7778, 4);
  });

  it.each(['2022-02-04T01:00:00Z', '2022-02-04T07:00:00Z', '2022-02-04T10:00:00Z'])(
    'spreads the ten-hour run of 66 °F over %s',
    (iso) => expect(kelvinToCelsius(hourAt(answer, iso).temperature!)).toBeCloseTo(18.8889, 4),
  );

  it('ends that run where the next begins: 65 °F at 11:00', () => {
    expect(kelvinToCelsius(hourAt(answer, '2022-02-04T11:00:00Z').temperature!)).toBeCloseTo(18.3333, 4);
  });

  it('reads each layer on its own steps: dew point PT5H then PT10H, humidity PT9H then 100 %', () => {
    expect(kelvinToCelsius(hourAt(answer, '2022-02-04T01:00:00Z').dewPoint!)).toBeCloseTo(17.7778, 4);
    expect(kelvinToCelsius(hourAt(answer, '2022-02-04T02:00:00Z').dewPoint!)).toBeCloseTo(18.3333, 4);
    expect(hourAt(answer, '2022-02-04T10:00:00Z').relativeHumidity).toBeCloseTo(0.97, 9);
    expect(hourAt(answer, '2022-02-04T11:00:00Z').relativeHumidity).toBe(1);
  });

  it('has no pressure: the layer is there and empty', () => {
    expect(expectOk(completeHours(answer, metre(4))).hasPressure).toBe(false);
  });
});

describe("the US service's recorded grid for Birmingham", () => {
  const answer = read(weatherFixture('nws-gridpoint-BMX-59-84.json'));

  it('leaves out the eight hours that have a temperature and no humidity yet', () => {
    const { hours, missing } = expectOk(completeHours(answer, answer.elevation));
    expect(missing.slice(0, 8).map(isoUtc)[0]).toBe('2024-02-20T10:00:00Z');
    expect(isoUtc(hours[0]!.at)).toBe('2024-02-20T18:00:00Z');
    expect(kelvinToCelsius(hours[0]!.temperature)).toBeCloseTo(2.2222, 4);
    expect(hours[0]!.relativeHumidity).toBeCloseTo(0.72, 9);
  });

  it('moves temperature to a site 100 m above its ground with 0.65 K', () => {
    const { hours } = expectOk(completeHours(answer, metre(answer.elevation + 100)));
    expect(kelvinToCelsius(hours[0]!.temperature)).toBeCloseTo(2.2222 - 0.65, 4);
  });
});

describe('a point of the US service', () => {
  it('is a cell of three parts, and the address beside it is not read', () => {
    const point = expectOk(parseAnswer(weatherGovPointSchema, weatherFixture('nws-points-30_-85.json')));
    expect(point.properties).toEqual({ gridId: 'TAE', gridX: 58, gridY: 65 });
  });

  it.each(['../x', 'TAE/58,65/../..', 'tae', ''])('with the office %j is refused', (gridId) => {
    expect(parseAnswer(weatherGovPointSchema, { properties: { gridId, gridX: 1, gridY: 2 } }).ok).toBe(false);
  });
});

// Every duration form seen in the service's recorded grids.
describe('a duration', () => {
  it.each([
    ['PT1H', 1],
    ['PT21H', 21],
    ['P1D', 24],
    ['P2D', 48],
    ['P1DT6H', 30],
    ['P1DT18H', 42],
    ['P7DT20H', 188],
    ['PT30M', 0.5],
    ['P1W', 168],
  ])('of %s is %d hours', (text, hours) => expect(durationMs(text)).toBe(hours * HOUR_MS));

  it.each(['', 'P', 'PT', 'P1DT', '1H', 'PT-1H', 'P1M', 'P1Y', 'PT1.5H', 'pt1h'])('of %j is none', (text) =>
    expect(durationMs(text)).toBeNull(),
  );

  it.each([
    '2022-02-03T21:00:00+00:00',
    '2022-02-03T21:00:00/PT1H',
    'x/PT1H',
    '2022-02-03T21:00:00Z/PT0H',
    '2022-02-03T21:00:00Z/P9999D',
  ])('in %j makes no interval', (text) => expect(readInterval(text)).toBeNull());

  it('runs from the start with its offset', () => {
    expect(readInterval('2019-10-14T20:00:00-04:00/P1DT6H')).toEqual({
      start: expectOk(readInstant('2019-10-15T00:00:00Z')),
      end: expectOk(readInstant('2019-10-16T06:00:00Z')),
    });
  });
});

function grid(temperature: object, rest: object = {}): unknown {
  return {
    properties: {
      updateTime: '2027-01-16T20:00:00+00:00',
      elevation: { unitCode: 'wmoUnit:m', value: 300 },
      temperature,
      ...rest,
    },
  };
}

describe("the US service's traps", () => {
  it('holds 0 °C and 0 % for values and null for missing', () => {
    const answer = read(
      grid(
        {
          uom: 'wmoUnit:degC',
          values: [
            { validTime: '2027-01-16T20:00:00+00:00/PT1H', value: 0 },
            { validTime: '2027-01-16T21:00:00+00:00/PT1H', value: null },
          ],
        },
        {
          relativeHumidity: {
            uom: 'wmoUnit:percent',
            values: [{ validTime: '2027-01-16T20:00:00+00:00/PT2H', value: 0 }],
          },
        },
      ),
    );
    expect(answer.hours).toMatchObject([
      { temperature: 273.15, relativeHumidity: 0 },
      { temperature: null, relativeHumidity: 0 },
    ]);
  });

  it('refuses a layer in °F, one without a unit, and one with intervals it cannot read', () => {
    const values = [{ validTime: '2027-01-16T20:00:00+00:00/PT1H', value: 20 }];
    const adapt = (layer: object) =>
      adaptWeatherGov(expectOk(parseAnswer(weatherGovGridSchema, grid(layer))));
    expect(adapt({ uom: 'wmoUnit:degF', values })).toMatchObject({ reason: { code: 'wrong-units' } });
    expect(adapt({ values })).toMatchObject({ reason: { code: 'wrong-units', unit: '' } });
    expect(adapt({ uom: 'wmoUnit:degC', values: [{ validTime: 'now/PT1H', value: 1 }] })).toMatchObject({
      reason: { code: 'unexpected-shape' },
    });
  });

  it('refuses a grid that spans centuries instead of counting its hours', () => {
    const values = ['1900-01-01T00:00:00Z/PT1H', '2900-01-01T00:00:00Z/PT1H'].map((validTime) => ({
      validTime,
      value: 1,
    }));
    const wire = expectOk(parseAnswer(weatherGovGridSchema, grid({ uom: 'wmoUnit:degC', values })));
    expect(adaptWeatherGov(wire)).toMatchObject({ ok: false, reason: { code: 'unexpected-shape' } });
  });

  it('finds no hours in an empty layer', () => {
    const wire = expectOk(parseAnswer(weatherGovGridSchema, grid({ uom: 'wmoUnit:degC', values: [] })));
    expect(adaptWeatherGov(wire)).toEqual({ ok: false, reason: { code: 'no-hours' } });
  });
});
