import { describe, expect, it } from 'vitest';
import { forecastSeries } from '@/lib/contract/forecast-series';
import { forecastRecordFrom } from '@/lib/night/forecast-record';
import { forecastRecordSchema } from '@/lib/store/records';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { forecastAnswer, NOON } from '../weather-page/forecast-answer';

const place = { name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 };
const now = instant(NOON + 7 * HOUR_MS);
const keep = (
  answer: ReturnType<typeof forecastAnswer>,
  before: ReturnType<typeof forecastRecordFrom> | null,
) => forecastRecordFrom({ answer, place, now, before });

describe('a forecast that is kept', () => {
  it('holds all that came and reads back as the same hours', () => {
    const answer = forecastAnswer({
      more: {
        freshness: 'stale',
        tries: [{ source: 'met-norway', problem: { code: 'bad-status', status: 500 } }],
        missing: ['2027-01-17T14:00:00Z'],
        leftOut: [{ time: '2027-01-17T14:00:00Z', code: 'jump' }],
      },
    });
    const record = keep(answer, null);
    expect(forecastRecordSchema.parse(record)).toEqual(record);
    expect(record.forecast).toMatchObject({
      by: 'open-meteo',
      freshness: 'stale',
      tries: [{ source: 'met-norway', problem: { code: 'bad-status' } }],
      missing: ['2027-01-17T14:00:00Z'],
      leftOut: [{ time: '2027-01-17T14:00:00Z', code: 'jump' }],
    });
    const series = forecastSeries(record.forecast);
    expect(series.hours).toHaveLength(answer.hours.length);
    expect(series.hours[9]).toMatchObject({ temperature: 258.75, spread: 0.9, origin: 'forecast' });
    expect(series.source.attributionUrl).toBe('https://open-meteo.com/');
  });

  it('keeps the hours of this evening that a newer one leaves out, so that a reading finds its hour', () => {
    const first = keep(forecastAnswer(), null);
    const newer = forecastAnswer({ from: NOON + 7 * HOUR_MS, celsius: [-20, -21, -22] });
    const { hours } = keep(newer, first).forecast;
    expect(hours.map(({ temperatureC }) => temperatureC)).toEqual([
      -8.3, -7.4, -6.7, -6.7, -6.9, -7.2, -7.8, -20, -21, -22,
    ]);
  });

  it('keeps no hour of another place, another height or the day before yesterday', () => {
    const first = keep(forecastAnswer(), null);
    const newer = forecastAnswer({ from: NOON + 7 * HOUR_MS, celsius: [-20] });
    const elsewhere = { ...first, place: { ...place, latitude: 46 } };
    expect(keep(newer, elsewhere).forecast.hours).toHaveLength(1);
    expect(keep({ ...newer, elevationM: 900 }, first).forecast.hours).toHaveLength(1);
    const later = forecastAnswer({ from: NOON + 47 * HOUR_MS, celsius: [-20] });
    expect(keep(later, first).forecast.hours).toHaveLength(1);
  });
});
