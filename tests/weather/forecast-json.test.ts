import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastSchema, keptForecastSchema } from '@/lib/contract/forecast';
import { forecastSeries } from '@/lib/contract/forecast-series';
import { parseWith } from '@/lib/contract/parse';
import { pathText } from '@/lib/contract/problem';
import { PRESSURE_SOURCES, SOURCE_NAMES } from '@/lib/contract/source-name';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';
import type { Forecast, ForecastHour } from '@/lib/weather/forecast';
import { forecastToJson } from '@/lib/weather/forecast-json';
import type { SourceProblem } from '@/lib/weather/problem';
import { EVENING } from '@/tests/support/weather-deps';

const HOUR: ForecastHour = {
  at: EVENING,
  temperature: celsiusToKelvin(0),
  pressure: hectopascalToPascal(985.1),
  pressureFrom: 'station',
  relativeHumidity: ratio(0),
  spread: kelvinDifference(0),
  origin: 'forecast',
  temperatureBy: 'open-meteo',
  pressureBy: 'open-meteo',
};

const FORECAST: Forecast = {
  hours: [
    HOUR,
    {
      ...HOUR,
      at: instant(EVENING + HOUR_MS),
      temperature: celsiusToKelvin(-10),
      spread: null,
      origin: 'filled',
    },
  ],
  missing: [instant(EVENING + 5 * HOUR_MS)],
  leftOut: [{ at: instant(EVENING + HOUR_MS), code: 'jump' }],
  elevation: metre(280),
  elevationFrom: 'given',
  place: { latitude: 46.79, longitude: -92.1 },
  by: 'open-meteo',
  source: {
    name: 'Open-Meteo',
    attribution: 'Weather data by Open-Meteo.com',
    attributionUrl: 'https://open-meteo.com/',
    issuedAt: null,
    fetchedAt: EVENING,
    modelElevation: metre(312),
  },
  freshness: 'fresh',
  freshUntil: instant(EVENING + 900_000),
  tries: [{ source: 'met-norway', problem: { code: 'no-contact' } }],
};

const anyHour: fc.Arbitrary<Omit<ForecastHour, 'at'>> = fc.record({
  temperature: fc.integer({ min: -600, max: 550 }).map((tenths) => celsiusToKelvin(tenths / 10)),
  pressure: fc.integer({ min: 5000, max: 10_900 }).map((tenths) => hectopascalToPascal(tenths / 10)),
  pressureFrom: fc.constantFrom('station' as const, 'sea-level' as const, 'standard' as const),
  relativeHumidity: fc.integer({ min: 0, max: 100 }).map((percent) => ratio(percent / 100)),
  spread: fc.option(fc.integer({ min: 0, max: 800 }).map((hundredths) => kelvinDifference(hundredths / 100))),
  origin: fc.constantFrom('forecast' as const, 'filled' as const),
  temperatureBy: fc.constantFrom(...SOURCE_NAMES),
  pressureBy: fc.constantFrom(...PRESSURE_SOURCES),
});

describe('a forecast as JSON', () => {
  it('names every number with its unit, and writes 0 °C, 0 % and no spread as what they are', () => {
    const json = forecastToJson(FORECAST);
    expect(json.hours[0]).toEqual({
      time: '2027-01-16T22:10:00Z',
      temperatureC: 0,
      pressureHpa: 985.1,
      pressureFrom: 'station',
      relativeHumidity: 0,
      spreadK: 0,
      origin: 'forecast',
      temperatureBy: 'open-meteo',
      pressureBy: 'open-meteo',
    });
    expect(json.hours[1]).toMatchObject({ temperatureC: -10, spreadK: null, origin: 'filled' });
    expect(json).toMatchObject({
      elevationM: 280,
      modelElevationM: 312,
      issuedAt: null,
      missing: ['2027-01-17T03:10:00Z'],
    });
  });

  it('comes back as it was', () => {
    fc.assert(
      fc.property(fc.array(anyHour, { maxLength: 20 }), (rest) => {
        const forecast = {
          ...FORECAST,
          hours: rest.map((hour, i) => ({ ...hour, at: instant(EVENING + i * HOUR_MS) })),
        };
        const sent: unknown = JSON.parse(JSON.stringify(forecastToJson(forecast)));
        const answer = expectOk(parseWith(forecastSchema, sent));
        // Nothing is lost or added on the way, and as it comes it can be kept.
        expect(answer).toEqual(sent);
        expect(expectOk(parseWith(keptForecastSchema, answer))).toEqual(answer);
        const back = forecastSeries(answer);
        expect(back).toMatchObject({ elevation: forecast.elevation, source: forecast.source });
        expect(back.hours).toHaveLength(forecast.hours.length);
        back.hours.forEach((hour, i) => {
          const was = forecast.hours[i]!;
          // Six decimals of °C and hPa survive.
          expect(hour.temperature).toBeCloseTo(was.temperature, 5);
          expect(hour.pressure).toBeCloseTo(was.pressure, 3);
          expect({ ...hour, temperature: 0, pressure: 0 }).toEqual({ ...was, temperature: 0, pressure: 0 });
        });
      }),
    );
  });

  it.each<SourceProblem>([
    { code: 'timeout' },
    { code: 'bad-status', status: 503 },
    { code: 'rate-limited', until: EVENING },
    { code: 'resting', until: EVENING },
    { code: 'unexpected-shape', field: 'hourly.time.3' },
    { code: 'wrong-units', field: 'temperature_2m', unit: '°F' },
    { code: 'implausible', field: 'pressure', value: 2909 },
  ])('keeps why a service was not used: %j', (problem) => {
    const forecast = { ...FORECAST, tries: [{ source: 'open-meteo' as const, problem }] };
    const said = 'until' in problem ? { ...problem, until: '2027-01-16T22:10:00Z' } : problem;
    const tries = [{ source: 'open-meteo', problem: said }];
    const answer = expectOk(parseWith(forecastSchema, forecastToJson(forecast)));
    expect(answer.tries).toEqual(tries);
    expect(expectOk(parseWith(keptForecastSchema, answer)).tries).toEqual(tries);
  });

  it.each([
    [null, ''],
    [[], ''],
    [{ ...forecastToJson(FORECAST), elevationM: 'high' }, 'elevationM'],
    [{ ...forecastToJson(FORECAST), hours: [{ time: '2027-01-16T22:10:00Z' }] }, 'hours[0].temperatureC'],
    [{ ...forecastToJson(FORECAST), hours: forecastToJson(FORECAST).hours.toReversed() }, 'hours[1].time'],
    [{ ...forecastToJson(FORECAST), freshUntil: 'soon' }, 'freshUntil'],
  ])('is refused where it is none: %#', (data, field) => {
    for (const schema of [forecastSchema, keptForecastSchema]) {
      const read = parseWith(schema, data);
      expect(read.ok ? null : pathText(read.reason[0]?.path ?? [])).toBe(field);
    }
  });

  it('fits its own schema', () => {
    expect(forecastSchema.safeParse(forecastToJson(FORECAST)).success).toBe(true);
  });
});
