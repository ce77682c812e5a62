import { describe, expect, it } from 'vitest';
import type { HourSeries, Sky } from '@/lib/hours/series';
import { forecastSd, pressureError, temperatureError } from '@/lib/plan/forecast-error';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { kelvinDifference, metre, ratio, speedMs } from '@/lib/units/quantity';
import { clock, DUSK, hour, seriesOf } from '@/tests/support/plan-cases';

const MILD = seriesOf(new Array<number>(80).fill(0));
const COLD = seriesOf(new Array<number>(80).fill(-20));
const errorOf = (series: typeof MILD, now = DUSK) => temperatureError({ series, now });
const celsius = (t: number) => t + 273.15;

/** Root of 3.8: a mild forecast a day ahead [K]. */
const DAY = Math.sqrt(3.8);
/** Root of 3.8 + 0.235 * 15: -20 °C a day ahead [K]. */
const COLD_DAY = Math.sqrt(3.8 + 0.235 * 15);

describe('The error of a forecast', () => {
  it('has the sizes that are written down, by lead time, in straight lines between', () => {
    for (const [lead, growth] of [
      [0, 0.96],
      [12, 0.96],
      [18, 0.98],
      [24, 1],
      [48, 1.1],
      [60, 1.16],
      [72, 1.22],
    ] as const) {
      expect(errorOf(MILD).sd(DUSK + lead * HOUR_MS), `${lead} h`).toBeCloseTo(growth * DAY, 12);
      expect(errorOf(COLD).sd(DUSK + lead * HOUR_MS), `${lead} h`).toBeCloseTo(growth * COLD_DAY, 12);
    }
    expect(forecastSd(celsius(-5), 24)).toBeCloseTo(DAY, 12);
    expect(forecastSd(celsius(-5), -5)).toBeCloseTo(0.96 * DAY, 12);
  });

  it('grows with every hour ahead, to the spread of the season and no further', () => {
    for (const t of [5, -5, -20, -45]) {
      const sds = Array.from({ length: 60 }, (_, i) => forecastSd(celsius(t), i * 24));
      for (let i = 1; i < sds.length; i++) expect(sds[i]).toBeGreaterThanOrEqual(sds[i - 1]!);
      expect(sds[48]).toBe(sds[59]);
    }
    expect(forecastSd(celsius(0), 240)).toBe(6);
    expect(forecastSd(celsius(0), 48 * 24)).toBe(6.2);
    expect(forecastSd(celsius(0), 192)).toBeCloseTo((1.8 * DAY + 6) / 2, 12);
  });

  it('counts lead from when the forecast was made, and from now where nobody knows', () => {
    const issued = instant(DUSK - 18 * HOUR_MS);
    const old = { ...MILD, source: { ...MILD.source, issuedAt: issued } };
    expect(errorOf(old).sd(clock(23))).toBeCloseTo(DAY, 12);
    const typed = { ...MILD, source: { ...MILD.source, issuedAt: null, fetchedAt: null } };
    expect(errorOf(typed, clock(20)).sd(clock(32))).toBeCloseTo(0.96 * DAY, 12);
  });

  it('takes an ensemble for too narrow: 1.3 K on plains, 3 K among mountains, the cold on top', () => {
    const spread = kelvinDifference(2);
    const sdOf = (t: number, given: { elevation?: number; model?: number }) => {
      const series = seriesOf([t, t], { spread });
      const source = {
        ...series.source,
        modelElevation: given.model === undefined ? null : metre(given.model),
      };
      return errorOf({ ...series, source, elevation: metre(given.elevation ?? 240) }).sd(clock(17));
    };
    expect(sdOf(0, {})).toBeCloseTo(Math.hypot(2, 1.3), 12);
    expect(sdOf(0, { elevation: 900 })).toBeCloseTo(Math.hypot(2, 3), 12);
    expect(sdOf(0, { elevation: 450 })).toBeCloseTo(Math.hypot(2, (1.3 + 3) / 2), 12);
    expect(sdOf(0, { elevation: 240, model: 640 })).toBeCloseTo(Math.hypot(2, 3), 12);
    expect(sdOf(0, { elevation: 240, model: 300 })).toBeCloseTo(Math.hypot(2, 1.3), 12);
    expect(sdOf(-20, {})).toBeCloseTo(Math.sqrt(4 + 1.3 ** 2 + 0.235 * 15), 12);
    const half = { ...MILD, hours: [hour(clock(17), 0, { spread }), hour(clock(18), 0)] };
    expect(errorOf(half).sd(clock(17.5))).toBeCloseTo((Math.hypot(2, 1.3) + 0.96 * DAY) / 2, 12);
  });

  it('lasts: 22 % all night, the rest forgotten to 1/e in six hours', () => {
    const { clock: theta, lasting } = errorOf(MILD);
    expect(lasting).toBe(0.22);
    expect(theta(clock(26)) - theta(clock(20))).toBeCloseTo(1, 12);
  });

  it('of pressure is small and lasts, and wide where pressure is only the standard atmosphere', () => {
    const measured = pressureError({ series: MILD, now: DUSK });
    expect(measured.sd(clock(20))).toBeCloseTo(Math.hypot(70, 70), 12);
    expect(measured.sd(clock(65))).toBeCloseTo(Math.hypot(100, 70), 12);
    expect(measured.clock(clock(29)) - measured.clock(clock(17))).toBeCloseTo(0.5, 12);
    expect(measured.lasting).toBe(0);
    const guessed = {
      ...MILD,
      hours: MILD.hours.map((each) => ({ ...each, pressureFrom: 'standard' as const })),
    };
    expect(pressureError({ series: guessed, now: DUSK }).sd(clock(20))).toBe(1000);
  });
});

const CLEAR: Sky = { cloudCover: ratio(0.1), wind: speedMs(1), snowDepth: metre(0.3), daylight: false };

/** What the planner takes a raw model's hour for: how much colder, and how much wider than an official forecast's. */
function raw(t: number, sky: Partial<Sky>, rawModel = true) {
  const error = errorOf(seriesOf([t, t], { rawModel, sky: { ...CLEAR, ...sky } }));
  return {
    mean: error.mean(clock(17)),
    wider: error.sd(clock(17)) / errorOf(seriesOf([t, t])).sd(clock(17)),
  };
}

const CLOUDY: Partial<Sky> = { cloudCover: ratio(1) };

/** Hours of which nobody says who made them. */
function untold(series: HourSeries): HourSeries {
  return { ...series, hours: series.hours.map(({ rawModel: _, ...rest }) => rest) };
}

describe("A raw model's error", () => {
  it('is wider in the cold, and a degree colder on a clear calm night over snow', () => {
    expect(raw(-15, {}).mean).toBeCloseTo(-1, 12);
    expect(raw(-15, CLOUDY).wider).toBeCloseTo(1.2, 12);
    expect(raw(-7.5, {}).mean).toBeCloseTo(-0.5, 12);
    expect(raw(-7.5, CLOUDY).wider).toBeCloseTo(1.1, 12);
    expect(raw(-4, {})).toEqual({ mean: 0, wider: 1 });
  });

  // Data D of the errors that were measured: sd 3.2 K, sky at most 2/8, wind at most 2 m/s, forecasts to 48 h.
  it('is as wide on a clear calm night as was measured, and what the bias adds stays all night', () => {
    const day = new Array<number>(25).fill(-10);
    const clear = errorOf(seriesOf(day, { rawModel: true, sky: CLEAR }));
    const bare = errorOf(seriesOf(day, { rawModel: true, sky: { ...CLEAR, ...CLOUDY } }));
    const at = clock(17 + 24);
    expect(clear.sd(at)).toBeCloseTo(3.2, 1);
    expect(clear.sd(at) ** 2 - bare.sd(at) ** 2).toBeCloseTo(1.7 ** 2, 12);
    expect(bare.lasting).toBe(0.22);
    expect(clear.lasting * clear.sd(at) ** 2).toBeCloseTo(0.22 * bare.sd(at) ** 2 + 1.7 ** 2, 0);
  });

  it('is no colder under cloud, in wind, over bare ground, or by day', () => {
    for (const sky of [
      { cloudCover: ratio(0.6) },
      { wind: speedMs(5) },
      { snowDepth: metre(0) },
      { daylight: true },
    ])
      expect(raw(-15, sky), JSON.stringify(sky)).toEqual({ mean: 0, wider: expect.closeTo(1.2, 12) });
  });

  it('is taken as colder where wind, snow or the sun are not told', () => {
    expect(raw(-15, { wind: null, snowDepth: null, daylight: null }).mean).toBeCloseTo(-1, 12);
  });

  // Data D, nights forecast below -10 °C under any sky: median -0.6 K, 95th percentile +7.6 K, forecasts to 48 h.
  it('reaches under a sky that nobody told as far as was measured, moves no hour, and stays all night', () => {
    const day = new Array<number>(25).fill(-15);
    const unseen = errorOf(seriesOf(day, { rawModel: true }));
    const cloudy = errorOf(seriesOf(day, { rawModel: true, sky: { ...CLEAR, ...CLOUDY } }));
    const at = clock(17 + 24);
    expect(unseen.mean(at)).toBe(0);
    expect(Math.abs(1.645 * unseen.sd(at) - 7.6)).toBeLessThan(0.1);
    expect(unseen.sd(at) ** 2 - cloudy.sd(at) ** 2).toBeCloseTo(3.5 ** 2, 12);
    expect(unseen.lasting * unseen.sd(at) ** 2).toBeCloseTo(0.22 * cloudy.sd(at) ** 2 + 3.5 ** 2, 0);
    expect(raw(-15, { cloudCover: null }).wider).toBeGreaterThan(raw(-15, CLOUDY).wider);
    expect(raw(-15, { cloudCover: null, daylight: true }).wider).toBeCloseTo(1.2, 12);
    expect(errorOf(seriesOf([-4, -4], { rawModel: true })).sd(clock(17))).toBe(
      errorOf(seriesOf([-4, -4])).sd(clock(17)),
    );
  });

  it('is that of hours of which nobody says who made them, such as typed ones', () => {
    for (const sky of [undefined, CLEAR]) {
      const given = seriesOf([-15, -15], { rawModel: true, ...(sky === undefined ? {} : { sky }) });
      const [told, unknown] = [errorOf(given), errorOf(untold(given))];
      expect(unknown.sd(clock(17))).toBe(told.sd(clock(17)));
      expect(unknown.mean(clock(17))).toBe(told.mean(clock(17)));
      expect(unknown.lasting).toBe(told.lasting);
    }
  });

  it('is that of raw models alone: official and adjusted forecasts have none of it', () => {
    expect(raw(-15, {}, false)).toEqual({ mean: 0, wider: 1 });
  });
});
