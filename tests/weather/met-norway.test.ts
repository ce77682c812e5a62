import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { expectOk } from '@/lib/result/result';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { completeHours } from '@/lib/weather/complete-hours';
import { adaptMetNorway } from '@/lib/weather/met-norway/adapt';
import { metNorwaySchema } from '@/lib/weather/met-norway/schema';
import { parseAnswer } from '@/lib/weather/parse-answer';
import { weatherFixture } from '@/tests/support/weather-fixture';

// The recording wraps the service's own body in `data`.
const body = z.object({ data: z.unknown() }).parse(weatherFixture('metno-complete-london.json')).data;
const london = expectOk(adaptMetNorway(expectOk(parseAnswer(metNorwaySchema, body))));

function forecast(details: object, units: object = {}): unknown {
  return {
    geometry: { coordinates: [15, 62, 400] },
    properties: {
      meta: { updated_at: '2027-01-16T20:00:00Z', units },
      timeseries: [{ time: '2027-01-16T21:00:00Z', data: { instant: { details } } }],
    },
  };
}

// Values below were read by eye from the recorded answer; where it comes from: tests/fixtures/weather/SOURCES.md.
describe("MET Norway's recorded answer", () => {
  it('gives the hours at their instants, with the time the forecast was made', () => {
    expect(isoUtc(london.issuedAt!)).toBe('2020-07-20T01:30:57Z');
    expect(isoUtc(london.hours[0]!.at)).toBe('2020-07-20T11:00:00Z');
    expect(kelvinToCelsius(london.hours[0]!.temperature!)).toBeCloseTo(18.8, 9);
    expect(london.hours[0]!.relativeHumidity).toBeCloseTo(0.47, 9);
    expect(kelvinToCelsius(london.hours[0]!.dewPoint!)).toBeCloseTo(7.2, 9);
    expect(kelvinToCelsius(london.hours[2]!.temperature!)).toBeCloseTo(20.3, 9);
  });

  it('gives pressure at sea level only, and the height in use', () => {
    expect(london.elevation).toBe(25);
    expect(london.hours.every((hour) => hour.stationPressure === null)).toBe(true);
    expect(pascalToHectopascal(london.hours[0]!.seaLevelPressure!)).toBeCloseTo(1023.2, 9);
  });

  it('brings it to the site: 25 m up is 3 hPa less, and the hour says from what', () => {
    const { hours } = expectOk(completeHours(london, metre(25)));
    // 1023.2 hPa less 25 m of air at 18.8 °C: 1023.2 (1 - g 25 / (287.05 * 292.0)) = 1020.21 hPa.
    expect(pascalToHectopascal(hours[0]!.pressure!)).toBeCloseTo(1020.21, 1);
    expect(hours[0]!.pressureFrom).toBe('sea-level');
  });

  it('does not fill between its own six-hourly steps, which are not gaps', () => {
    const { hours, missing } = expectOk(completeHours(london, metre(25)));
    expect(hours).toHaveLength(22);
    expect(missing).toEqual([]);
    expect(hours.slice(-3).map((hour) => isoUtc(hour.at))).toEqual([
      '2020-07-23T06:00:00Z',
      '2020-07-23T12:00:00Z',
      '2020-07-29T06:00:00Z',
    ]);
  });
});

describe("MET Norway's traps", () => {
  it('holds 0 °C and 0 % for values, and a key that the area lacks for missing', () => {
    const details = { air_temperature: 0, relative_humidity: 0, air_pressure_at_sea_level: 1013 };
    const { hours } = expectOk(adaptMetNorway(expectOk(parseAnswer(metNorwaySchema, forecast(details)))));
    expect(hours[0]).toMatchObject({
      temperature: 273.15,
      relativeHumidity: 0,
      dewPoint: null,
      spread: null,
    });
  });

  it('makes a spread of its percentiles: 2.6 K from tenth to ninetieth is 1.014 K', () => {
    const details = {
      air_temperature: -8,
      air_temperature_percentile_10: -9.3,
      air_temperature_percentile_90: -6.7,
    };
    const { hours } = expectOk(adaptMetNorway(expectOk(parseAnswer(metNorwaySchema, forecast(details)))));
    // z(0.9) = 1.2816, any table of the normal distribution; 2.6 / 2.5631 = 1.0144.
    expect(hours[0]!.spread).toBeCloseTo(1.0144, 4);
  });

  it('accepts its own misspelling of celsius and refuses kelvin', () => {
    const details = { air_temperature: -8 };
    const spelt = forecast(details, { air_temperature: 'celcius' });
    expect(adaptMetNorway(expectOk(parseAnswer(metNorwaySchema, spelt))).ok).toBe(true);
    const kelvin = forecast(details, { air_temperature: 'kelvin' });
    expect(adaptMetNorway(expectOk(parseAnswer(metNorwaySchema, kelvin)))).toEqual({
      ok: false,
      reason: { code: 'wrong-units', field: 'air_temperature', unit: 'kelvin' },
    });
  });

  it('refuses a time without a zone', () => {
    const wire = expectOk(parseAnswer(metNorwaySchema, body));
    const first = wire.properties.timeseries[0]!;
    const vague = {
      ...wire,
      properties: { ...wire.properties, timeseries: [{ ...first, time: '2020-07-20T11:00:00' }] },
    };
    expect(adaptMetNorway(vague)).toMatchObject({ ok: false, reason: { code: 'unexpected-shape' } });
  });
});
