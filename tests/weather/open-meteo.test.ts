import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { isoUtc, readInstant } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { completeHours } from '@/lib/weather/complete-hours';
import { adaptOpenMeteo } from '@/lib/weather/open-meteo/adapt';
import { adaptPlaces } from '@/lib/weather/open-meteo/places';
import {
  openMeteoEnsembleSchema,
  openMeteoHoursSchema,
  openMeteoPlacesSchema,
} from '@/lib/weather/open-meteo/schema';
import { adaptSpread } from '@/lib/weather/open-meteo/spread';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import { weatherFixture } from '@/tests/support/weather-fixture';

const at = (iso: string) => expectOk(readInstant(iso));
const read = (json: unknown): ServiceAnswer =>
  expectOk(adaptOpenMeteo(expectOk(parseAnswer(openMeteoHoursSchema, json))));
const celsius = (answer: ServiceAnswer, row: number): number | null => {
  const temperature = answer.hours.at(row)?.temperature ?? null;
  return temperature === null ? null : kelvinToCelsius(temperature);
};

// Values below were read by eye from the recorded answers; where each comes from: tests/fixtures/weather/SOURCES.md.
describe("Open-Meteo's recorded answers", () => {
  it('takes the one offset off clock times: midnight in Amsterdam summer is 22:00 UTC', () => {
    const answer = read(weatherFixture('openmeteo-forecast-1h.json'));
    expect(answer.hours.map((hour) => isoUtc(hour.at))).toEqual(['2026-07-10T22:00:00Z']);
    expect(celsius(answer, 0)).toBeCloseTo(21.2, 9);
    expect(answer.elevation).toBe(11);
  });

  it('reads a past hour: 14.4 °C at 22:00 UTC on the last of May', () => {
    const answer = read(weatherFixture('openmeteo-historical-1h.json'));
    expect(isoUtc(answer.hours[0]!.at)).toBe('2024-05-31T22:00:00Z');
    expect(celsius(answer, 0)).toBeCloseTo(14.4, 9);
  });

  it('reads three days of a zone with a half-hour offset', () => {
    const answer = read(weatherFixture('openmeteo-archive-hourly-adelaide.json'));
    expect(answer.hours).toHaveLength(72);
    expect(isoUtc(answer.hours[0]!.at)).toBe('2025-01-09T14:30:00Z');
    expect(isoUtc(answer.hours.at(-1)!.at)).toBe('2025-01-12T13:30:00Z');
    expect(celsius(answer, 0)).toBeCloseTo(20.3, 9);
    expect(answer.hours[0]!.relativeHumidity).toBeCloseTo(0.33, 9);
    expect(celsius(answer, -1)).toBeCloseTo(25.8, 9);
  });

  it('finds no pressure where none is given, and says so instead of inventing one', () => {
    const answer = read(weatherFixture('openmeteo-archive-hourly-adelaide.json'));
    const hours = expectOk(completeHours(answer, metre(12)));
    expect(hours.hasPressure).toBe(false);
    expect(hours.hours.every((hour) => hour.pressure === null)).toBe(true);
  });

  it('leaves the six null hours at the end of a model open', () => {
    const answer = read(weatherFixture('SYNTHETIC-openmeteo-forecast-allfields-nulls.json'));
    const { hours, missing } = expectOk(completeHours(answer, metre(280)));
    expect(hours).toHaveLength(42);
    expect(missing).toHaveLength(6);
    expect(missing[0]).toBe(at('2026-01-18T18:00:00Z'));
    expect(hours[0]!.at).toBe(at('2026-01-17T00:00:00Z'));
    expect(pascalToHectopascal(hours[0]!.pressure!)).toBeCloseTo(985.1, 9);
    expect(hours[0]!.pressureFrom).toBe('station');
    expect(kelvinToCelsius(hours.at(-1)!.temperature)).toBeCloseTo(-11, 9);
  });

  it('refuses an answer for several models, whose names carry suffixes', () => {
    const json = weatherFixture('openmeteo-forecast-multimodel-keys.json');
    expect(parseAnswer(openMeteoHoursSchema, json)).toEqual({
      ok: false,
      reason: { code: 'unexpected-shape', field: 'hourly_units.temperature_2m' },
    });
  });

  it('makes a spread of 31 members: 0.20230 K, as Python statistics.stdev has it', () => {
    const wire = expectOk(parseAnswer(openMeteoEnsembleSchema, weatherFixture('openmeteo-ensemble-1h.json')));
    const spread = expectOk(adaptSpread(wire));
    expect([...spread.keys()].map(isoUtc)).toEqual(['2026-07-10T22:00:00Z']);
    expect([...spread.values()][0]).toBeCloseTo(0.20229861883561098, 12);
  });

  it('puts places that bear the name before those known under it elsewhere', () => {
    const json = weatherFixture('openmeteo-geocoding-hollywood.json');
    const places = adaptPlaces(expectOk(parseAnswer(openMeteoPlacesSchema, json)), 'hollywood');
    expect(places[0]).toEqual({
      name: 'Hollywood',
      region: 'Broward, Florida, United States',
      latitude: 26.0112,
      longitude: -80.14949,
      elevation: 3,
      zone: 'America/New_York',
    });
    const names = places.map((place) => place.name);
    expect(names.indexOf('Peggy')).toBeGreaterThan(names.lastIndexOf('Hollywood'));
  });

  it('takes absent results for no match', () => {
    expect(
      adaptPlaces(expectOk(parseAnswer(openMeteoPlacesSchema, { generationtime_ms: 0.4 })), 'xyz'),
    ).toEqual([]);
  });
});

const twoHours = {
  latitude: 46.79,
  longitude: -92.1,
  utc_offset_seconds: 0,
  elevation: 280,
  hourly_units: {
    time: 'unixtime',
    temperature_2m: '°C',
    relative_humidity_2m: '%',
    surface_pressure: 'hPa',
    pressure_msl: 'hPa',
  },
  hourly: {
    time: [1768608000, 1768611600],
    temperature_2m: [0, -10.2],
    relative_humidity_2m: [0, 71],
    surface_pressure: [985.1, 984.2],
    pressure_msl: [1020.4, 1019.8],
  },
};

describe("Open-Meteo's traps", () => {
  it('holds 0 °C and 0 % for values, not for missing ones', () => {
    const { hours, missing } = expectOk(completeHours(read(twoHours), metre(280)));
    expect(missing).toEqual([]);
    expect(hours[0]).toMatchObject({ temperature: 273.15, relativeHumidity: 0, pressure: 98510 });
  });

  it('refuses columns of different lengths', () => {
    const ragged = { ...twoHours, hourly: { ...twoHours.hourly, surface_pressure: [985.1] } };
    expect(adaptOpenMeteo(expectOk(parseAnswer(openMeteoHoursSchema, ragged)))).toEqual({
      ok: false,
      reason: { code: 'unexpected-shape', field: 'hourly.surface_pressure' },
    });
  });

  it('refuses hours that do not go forward', () => {
    const back = { ...twoHours, hourly: { ...twoHours.hourly, time: [1768611600, 1768608000] } };
    expect(adaptOpenMeteo(expectOk(parseAnswer(openMeteoHoursSchema, back)))).toMatchObject({
      ok: false,
      reason: { code: 'unexpected-shape', field: 'hourly.time.1' },
    });
  });

  it.each([
    ['temperature_2m', '°F'],
    ['surface_pressure', 'inHg'],
    ['relative_humidity_2m', ''],
  ])('refuses %s in %j', (field, unit) => {
    const wrong = { ...twoHours, hourly_units: { ...twoHours.hourly_units, [field]: unit } };
    expect(adaptOpenMeteo(expectOk(parseAnswer(openMeteoHoursSchema, wrong)))).toEqual({
      ok: false,
      reason: { code: 'wrong-units', field, unit },
    });
  });

  it.each([
    ['a sea-level pressure passed off as station pressure', { surface_pressure: [1020.4, 1019.8] }],
    [
      'pressure in inches under the name of hPa',
      { surface_pressure: [29.09, 29.06], pressure_msl: [30.1, 30.1] },
    ],
    ['pressure in pascal under the name of hPa', { surface_pressure: [98510, 98420] }],
    ['a thermometer at 148.89 °C', { temperature_2m: [148.89, -10] }],
    ['a humidity of 700 %', { relative_humidity_2m: [700, 71] }],
  ])('refuses %s', (_what, columns) => {
    const wrong = { ...twoHours, hourly: { ...twoHours.hourly, ...columns } };
    const hours = completeHours(read(wrong), metre(280));
    expect(hours).toMatchObject({ ok: false, reason: { code: 'implausible' } });
  });

  it('works humidity out from the dew point where only that is given', () => {
    const { relative_humidity_2m: _left, ...rest } = twoHours.hourly;
    const dewy = {
      ...twoHours,
      hourly_units: { ...twoHours.hourly_units, dew_point_2m: '°C' },
      hourly: { ...rest, dew_point_2m: [-5, -14.2] },
    };
    const { hours } = expectOk(completeHours(read(dewy), metre(280)));
    // e_w(-5 °C) / e_w(0 °C) = 421.84 / 611.21 Pa (Murphy and Koop 2005, eq. 10) = 0.6902.
    expect(hours[0]!.relativeHumidity).toBeCloseTo(0.6902, 3);
  });
});
