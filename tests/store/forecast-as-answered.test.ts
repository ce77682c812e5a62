import { expect, it } from 'vitest';
import { forecastAsAnswered } from '@/lib/store/forecast-as-answered';
import { forecastRecordSchema } from '@/lib/store/records';

const PLACE = { name: 'Gorm Lake', latitude: 46.125, longitude: -94.75 };
const HOUR = {
  time: '2027-01-17T00:00:00Z',
  temperatureC: -9,
  stationPressureHpa: 972.5,
  pressureFrom: 'standard',
  relativeHumidity: 0.7,
};

/** As format 1 kept what came with a shared night: no service, and what could be left out left out. */
const SHARED = {
  place: PLACE,
  fetchedAt: '2027-01-16T22:10:00Z',
  forecast: { elevationM: 362, source: { name: 'Shared with the night' }, hours: [HOUR] },
};

it('reads a forecast of the first format that has no service', () => {
  const { forecast } = forecastRecordSchema.parse(forecastAsAnswered(SHARED));
  expect(forecast).toEqual({
    latitude: 46.125,
    longitude: -94.75,
    elevationM: 362,
    modelElevationM: null,
    name: 'Shared with the night',
    attribution: '',
    attributionUrl: null,
    issuedAt: null,
    fetchedAt: '2027-01-16T22:10:00Z',
    hours: [
      {
        time: '2027-01-17T00:00:00Z',
        temperatureC: -9,
        pressureHpa: 972.5,
        pressureFrom: 'standard',
        relativeHumidity: 0.7,
        spreadK: null,
        origin: 'forecast',
      },
    ],
  });
});

it('keeps why a service was not used, also where today more is known of it', () => {
  const tries = [{ source: 'met-norway', code: 'bad-status' }];
  const kept = forecastRecordSchema.parse(
    forecastAsAnswered({ ...SHARED, forecast: { ...SHARED.forecast, tries } }),
  );
  expect(kept.forecast.tries).toEqual([{ source: 'met-norway', problem: { code: 'bad-status' } }]);
});

it.each([
  null,
  7,
  [],
  {},
  { place: PLACE, forecast: null },
  { ...SHARED, forecast: { ...SHARED.forecast, source: 'a service' } },
  { ...SHARED, forecast: { ...SHARED.forecast, hours: 'many' } },
  { ...SHARED, forecast: { ...SHARED.forecast, hours: [null] } },
  { ...SHARED, forecast: { ...SHARED.forecast, tries: [null] } },
  { ...SHARED, more: 1 },
])('leaves what is no forecast for the schema to refuse: %j', (value) => {
  const before = JSON.stringify(value);
  expect(forecastRecordSchema.safeParse(forecastAsAnswered(value)).success).toBe(false);
  expect(JSON.stringify(value)).toBe(before);
});
