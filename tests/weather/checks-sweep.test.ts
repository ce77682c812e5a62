import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import { checkAnswer } from '@/lib/weather/checks/check-answer';
import { adaptMetNorway } from '@/lib/weather/met-norway/adapt';
import { MET_NORWAY } from '@/lib/weather/met-norway/request';
import { metNorwaySchema } from '@/lib/weather/met-norway/schema';
import { adaptOpenMeteo } from '@/lib/weather/open-meteo/adapt';
import { HOURLY, OPEN_METEO } from '@/lib/weather/open-meteo/request';
import { openMeteoHoursSchema } from '@/lib/weather/open-meteo/schema';
import type { Source } from '@/lib/weather/source';
import { adaptWeatherGov } from '@/lib/weather/weather-gov/adapt';
import { WEATHER_GOV } from '@/lib/weather/weather-gov/request';
import { weatherGovGridSchema } from '@/lib/weather/weather-gov/schema';
import { spoilt } from '@/tests/support/fake-weather/contradictions';
import { metNorwayForecast } from '@/tests/support/fake-weather/met-norway';
import { openMeteoHours } from '@/tests/support/fake-weather/open-meteo';
import { weatherGovGrid } from '@/tests/support/fake-weather/weather-gov';

// Invented weather of a hundred places, seasons and seeds, by every service: none of it is dropped.
const CASES = Array.from({ length: 100 }, (_, i) => ({
  seed: i,
  latitude: 26 + ((i * 7.3) % 44),
  longitude: -120 + ((i * 11.9) % 50),
  elevation: metre(Math.round((i * 397) % 3200)),
  now: instant(Date.UTC(2026, i % 12, 1 + (i % 28), (i * 5) % 24, 10)),
}));
type Case = (typeof CASES)[number];

const WRITERS = {
  'open-meteo': ({ seed, now, ...site }: Case) =>
    JSON.stringify(
      openMeteoHours(
        new URLSearchParams({
          latitude: String(site.latitude),
          longitude: String(site.longitude),
          elevation: String(site.elevation),
          hourly: HOURLY,
          past_hours: '24',
          forecast_hours: '240',
        }),
        { seed, now },
      ),
    ),
  'met-norway': ({ seed, now, ...site }: Case) =>
    JSON.stringify(
      metNorwayForecast(
        new URLSearchParams({
          lat: String(site.latitude),
          lon: String(site.longitude),
          altitude: String(site.elevation),
        }),
        { seed, now },
      ),
    ),
  'weather-gov': ({ seed, now, latitude, longitude }: Case) =>
    JSON.stringify(
      weatherGovGrid(Math.round((longitude + 180) * 10), Math.round((latitude + 90) * 10), { seed, now }),
    ),
};
const READERS = {
  'open-meteo': (json: unknown) => adaptOpenMeteo(openMeteoHoursSchema.parse(json)),
  'met-norway': (json: unknown) => adaptMetNorway(metNorwaySchema.parse(json)),
  'weather-gov': (json: unknown) => adaptWeatherGov(weatherGovGridSchema.parse(json)),
};

function check(source: Source, place: Case, body: string) {
  const { backMs, aheadMs, ...ways } = source.habits;
  const { now } = place;
  const site = source === WEATHER_GOV ? { ...place, elevation: null } : place;
  return checkAnswer(expectOk(READERS[source.name](JSON.parse(body))), {
    ...ways,
    site,
    now,
    earliest: instant(now - backMs),
    latest: instant(now + aheadMs),
  });
}

describe.each([OPEN_METEO, MET_NORWAY, WEATHER_GOV])('$label', (source) => {
  it('is believed wherever and whenever it agrees with itself', () => {
    for (const place of CASES) {
      const checked = check(source, place, WRITERS[source.name](place));
      expect(checked).toMatchObject({ ok: true, value: { leftOut: [] } });
    }
  });

  it('is not believed where its °F are called °C', () => {
    const believed = CASES.filter((place) => {
      const body = spoilt('fahrenheit-called-celsius', WRITERS[source.name](place), place.now);
      return check(source, place, body).ok;
    });
    expect(believed).toEqual([]);
  });
});
