import { describe, expect, it } from 'vitest';
import type { Hour, HourSeries, Sky } from '@/lib/hours/series';
import { makePlan } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import { metre, ratio, speedMs } from '@/lib/units/quantity';
import { COLD_NIGHT, clock, DUSK, requestOf, runsOf } from '@/tests/support/plan-cases';

const CLEAR: Sky = { cloudCover: ratio(0.1), wind: speedMs(1), snowDepth: metre(0.3), daylight: false };
const NAMED = { code: 'model-misses-clear-cold', run: 0, colder: 1 };

function withHours(given: Partial<Hour>): HourSeries {
  return { ...COLD_NIGHT, hours: COLD_NIGHT.hours.map((hour) => ({ ...hour, ...given })) };
}

const planOf = (given: Partial<PlanRequest>) => expectOk(makePlan(requestOf(given)));
const warned = (given: Partial<PlanRequest>, code: string) =>
  planOf(given).warnings.find((warning) => warning.code === code);

describe('A clear calm night over snow', () => {
  const series = withHours({ rawModel: true, sky: CLEAR });

  it('is named at the first run that is cold enough, where a raw model forecast it', () => {
    // -8 °C at 19:00 is over half of the way from -5 to -10, and the run at 18:00 lies in the hour up to it.
    expect(warned({ series }, 'model-misses-clear-cold')).toEqual(NAMED);
    expect(warned({ series: withHours({ sky: CLEAR }) }, 'model-misses-clear-cold')).toBeUndefined();
    const cloudy = withHours({ rawModel: true, sky: { ...CLEAR, cloudCover: ratio(1) } });
    expect(warned({ series: cloudy }, 'model-misses-clear-cold')).toBeUndefined();
  });

  it('is named no more for the hours that a reading speaks for', () => {
    const reading = {
      id: 'r',
      at: clock(17.9),
      temperature: celsiusToKelvin(-6),
      stationPressure: null,
      relativeHumidity: null,
    };
    const given = { series, readings: [reading], now: clock(18) };
    expect(warned(given, 'model-misses-clear-cold')).toMatchObject({ run: 9 });
  });

  it('is planned colder and richer than the same night of an official forecast', () => {
    const [raw, official] = [planOf({ series }), planOf({ series: withHours({ sky: CLEAR }) })];
    for (const [i, { setting, air }] of raw.runs.entries()) {
      expect(setting.mains[0]).toBeGreaterThanOrEqual(official.runs[i]!.setting.mains[0]!);
      expect(official.runs[i]!.air.temperature - air.temperature).toBeLessThanOrEqual(1 + 1e-9);
    }
    const last = raw.runs.length - 1;
    expect(official.runs[last]!.air.temperature - raw.runs[last]!.air.temperature).toBeCloseTo(1, 9);
  });
});

describe('A night too far ahead', () => {
  it('is called a season from ten days on, with the days', () => {
    const now = instant(DUSK - 48 * 24 * HOUR_MS);
    const typed = { ...COLD_NIGHT, source: { ...COLD_NIGHT.source, issuedAt: null, fetchedAt: null } };
    const given = { series: typed, now, runs: runsOf({ first: 18, every: 60, count: 3 }) };
    expect(warned(given, 'season-not-forecast')).toEqual({
      code: 'season-not-forecast',
      run: 0,
      daysAhead: 48,
    });
    expect(
      warned({ ...given, now: instant(DUSK - 9 * 24 * HOUR_MS) }, 'season-not-forecast'),
    ).toBeUndefined();
    const near = planOf({ series: typed, runs: given.runs });
    expect(planOf(given).hours[3]!.temperatureSd).toBeGreaterThan(2 * near.hours[3]!.temperatureSd);
  });
});
