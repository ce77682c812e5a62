import { describe, expect, it } from 'vitest';
import { stationFromSeaLevel } from '@/lib/air/pressure';
import { dewPointOf, saturationOverIce, saturationOverWater } from '@/lib/air/saturation';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvin, metre, pascal, ratio } from '@/lib/units/quantity';
import { checkAnswer } from '@/lib/weather/checks/check-answer';
import { adaptMetNorway } from '@/lib/weather/met-norway/adapt';
import { metNorwaySchema } from '@/lib/weather/met-norway/schema';
import { adaptOpenMeteo } from '@/lib/weather/open-meteo/adapt';
import { openMeteoHoursSchema } from '@/lib/weather/open-meteo/schema';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import { adaptWeatherGov } from '@/lib/weather/weather-gov/adapt';
import { weatherGovGridSchema } from '@/lib/weather/weather-gov/schema';
import { EVENING } from '@/tests/support/weather-deps';
import { weatherFixture } from '@/tests/support/weather-fixture';

const HOURS = 48;
const EXPECTED = {
  site: { latitude: 46.79, longitude: -92.1, elevation: null },
  now: EVENING,
  earliest: instant(EVENING - 30 * HOUR_MS),
  latest: instant(EVENING + 246 * HOUR_MS),
  repeatsElevation: true,
  movesTemperatureOnly: false,
};

type Extreme = {
  readonly celsius: (hour: number) => number;
  readonly humidity?: (hour: number) => number;
  readonly seaLevelHpa?: (hour: number) => number;
  readonly elevation?: number;
  readonly stepHours?: number;
  readonly hours?: number;
  /** Whole °F, as offices draw them. */
  readonly coarse?: boolean;
};

const inTenths = (value: number): number => Math.round(value * 10) / 10;
const inWholeFahrenheit = (celsius: number): number => (Math.round(celsius * 1.8 + 32) - 32) / 1.8;

/** What a service would write of such weather, rounded as it does. */
function answerOf(extreme: Extreme): ServiceAnswer {
  const { celsius, humidity = () => 0.8, seaLevelHpa = () => 1015, elevation = 280, stepHours = 1 } = extreme;
  const rounded = extreme.coarse === true ? inWholeFahrenheit : inTenths;
  const hours = Array.from({ length: extreme.hours ?? HOURS }, (_, i) => {
    const temperature = celsiusToKelvin(celsius(i));
    const relativeHumidity = ratio(humidity(i));
    const seaLevel = hectopascalToPascal(seaLevelHpa(i));
    const station = stationFromSeaLevel(seaLevel, {
      elevation: metre(elevation),
      temperature,
      relativeHumidity,
    });
    const dewPoint = dewPointOf(pascal(relativeHumidity * saturationOverWater(temperature)))!;
    return {
      at: instant(EVENING - HOUR_MS + i * stepHours * HOUR_MS),
      temperature: celsiusToKelvin(rounded(celsius(i))),
      relativeHumidity: ratio(Math.round(humidity(i) * 100) / 100),
      dewPoint: celsiusToKelvin(rounded(dewPoint - 273.15)),
      stationPressure: hectopascalToPascal(inTenths(station / 100)),
      seaLevelPressure: hectopascalToPascal(inTenths(seaLevelHpa(i))),
      spread: null,
    };
  });
  return { hours, elevation: metre(elevation), issuedAt: null, place: null, conflicting: [] };
}

const day = (hour: number): number => Math.cos((2 * Math.PI * (hour - 6)) / 24);
const overIce = (celsius: number): number => {
  const at = celsiusToKelvin(celsius);
  return saturationOverIce(at) / saturationOverWater(at);
};

// Sizes are judgement, each larger than what is met on an ordinary night of it.
const EXTREMES: Readonly<Record<string, Extreme>> = {
  'a front of 15 K in an hour': { celsius: (h) => (h < 10 ? 6 : -9) - h * 0.1 },
  'three fronts of 15 K in as many hours': {
    celsius: (h) => 20 - 15 * Math.min(3, Math.max(0, h - 9)) - h * 0.1,
  },
  'a chinook of 27 K in an hour, which stays': {
    celsius: (h) => (h < 12 ? -20 : 7) + day(h),
    humidity: (h) => (h < 12 ? 0.8 : 0.25),
  },
  'a chinook that comes for an hour and goes': {
    celsius: (h) => (h === 12 ? -2 : -18) + day(h),
    humidity: (h) => (h === 12 ? 0.35 : 0.8),
  },
  'a chinook that comes and goes all night': {
    celsius: (h) => (Math.floor(h / 3) % 2 === 0 ? -18 : -2) + day(h),
    humidity: (h) => (Math.floor(h / 3) % 2 === 0 ? 0.8 : 0.3),
  },
  'an inversion that breaks in the morning: 14 K in an hour': {
    celsius: (h) => (h % 24 < 14 ? -28 - 0.2 * (h % 24) : -12),
  },
  '-50 °C for two days': { celsius: (h) => -50 - 3 * day(h), humidity: () => 0.66 },
  '-55 °C, with humidity at saturation over ice': {
    celsius: (h) => -55 - 5 * day(h),
    humidity: (h) => overIce(-55 - 5 * day(h)),
  },
  '100 % humidity for two nights': { celsius: (h) => -3 + day(h), humidity: () => 1 },
  'a whole day of fog at one temperature, in tenths': {
    celsius: (h) => (h < 10 ? -3 + 0.1 * h : h < 33 ? -2 : -2 - 0.2 * (h - 32)),
    humidity: () => 1,
  },
  'a day and a half of drizzle in whole °F': {
    celsius: (h) => (h < 40 ? 5 : 6.5),
    humidity: () => 0.97,
    coarse: true,
  },
  'a pressure that stands still': { celsius: (h) => -10 + 4 * day(h), seaLevelHpa: () => 1031.2 },
  'a storm that falls 6 hPa an hour': {
    celsius: (h) => 5 + day(h),
    seaLevelHpa: (h) => 1010 - 6 * Math.min(Math.abs(h - 24) < 12 ? 12 - Math.abs(h - 24) : 0, 10),
  },
  'a hurricane whose eye passes within two hours': {
    celsius: () => 26,
    humidity: (h) => 0.95 + 0.04 * day(h),
    seaLevelHpa: (h) => (h === 20 ? 940 : h === 19 || h === 21 ? 951 : h === 18 || h === 22 ? 975 : 1000),
    elevation: 3,
    hours: 24,
  },
  'a high of 1068 hPa': { celsius: (h) => -45 + 3 * day(h), humidity: () => 0.7, seaLevelHpa: () => 1068 },
  'a desert at 3 % humidity': { celsius: (h) => 28 + 14 * day(h), humidity: (h) => 0.06 - 0.03 * day(h) },
  "a desert's day in steps of six hours": {
    celsius: (h) => 15 + 18 * day(h * 6),
    humidity: (h) => 0.3 - 0.2 * day(h * 6),
    stepHours: 6,
    hours: 36,
  },
  'a track at 3,000 m': { celsius: (h) => -15 + 8 * day(h), humidity: () => 0.5, elevation: 3000 },
  'the shore of the Dead Sea': { celsius: (h) => 25 + 8 * day(h), humidity: () => 0.4, elevation: -420 },
  'air that dries from 98 % to 20 % in an hour': {
    celsius: (h) => 2 + 3 * day(h),
    humidity: (h) => (h < 20 ? 0.98 : 0.2),
  },
};

describe('true extremes', () => {
  it.each(Object.entries(EXTREMES))('%s: nothing is left out', (_name, extreme) => {
    expect(checkAnswer(answerOf(extreme), EXPECTED)).toMatchObject({ ok: true, value: { leftOut: [] } });
  });

  it.each([-6, -2, 3, 8])(
    'of a valley whose temperature is moved by %d K while its humidity is not, by the service that does so',
    (moved) => {
      const answer = answerOf({ celsius: (h) => -8 + 5 * day(h), humidity: (h) => 0.7 - 0.1 * day(h) });
      const hours = answer.hours.map((hour) => ({
        ...hour,
        temperature: kelvin(hour.temperature! + moved),
        stationPressure: null,
      }));
      const ways = { ...EXPECTED, movesTemperatureOnly: true };
      expect(checkAnswer({ ...answer, hours }, ways)).toMatchObject({ ok: true, value: { leftOut: [] } });
    },
  );
});

describe('recorded answers', () => {
  const at = (iso: string) => expectOk(readInstant(iso));
  const around = (now: Instant, latitude: number, longitude: number) => ({
    ...EXPECTED,
    site: { latitude, longitude, elevation: null },
    now,
    earliest: instant(now - 36 * HOUR_MS),
    latest: instant(now + 246 * HOUR_MS),
  });
  const metNorway = () => {
    // The fixture wraps the service's body.
    const { data } = weatherFixture('metno-complete-london.json') as { data: unknown };
    return expectOk(adaptMetNorway(metNorwaySchema.parse(data)));
  };
  const weatherGov = (name: string) =>
    expectOk(adaptWeatherGov(weatherGovGridSchema.parse(weatherFixture(name))));
  const openMeteo = (name: string) =>
    expectOk(adaptOpenMeteo(openMeteoHoursSchema.parse(weatherFixture(name))));

  it.each([
    ['London', metNorway, around(at('2020-07-20T11:44:31Z'), 51.5, -0.1)],
    [
      'the Gulf coast',
      () => weatherGov('nws-gridpoint-TAE-58-65-raw.json'),
      around(at('2022-02-04T03:30:00Z'), 30, -85),
    ],
    [
      'Alabama',
      () => weatherGov('nws-gridpoint-BMX-59-84.json'),
      around(at('2024-02-20T16:00:00Z'), 33.51, -86.82),
    ],
    [
      'an invented night',
      () => openMeteo('SYNTHETIC-openmeteo-forecast-allfields-nulls.json'),
      around(instant(1_768_608_000_000), 46.79, -92.1),
    ],
    [
      'Adelaide, past',
      () => openMeteo('openmeteo-archive-hourly-adelaide.json'),
      { ...around(at('2025-01-10T00:00:00Z'), -34.76, 138.65), now: null },
    ],
  ])('of %s are believed to the last hour', (_name, read, expected) => {
    expect(checkAnswer(read(), expected)).toMatchObject({ ok: true, value: { leftOut: [] } });
  });
});
