import { describe, expect, it } from 'vitest';
import { forecastSd, pressureError, temperatureError } from '@/lib/plan/forecast-error';
import { ENSEMBLE_FLOOR_SD, MOUNTAIN_FLOOR_SD, SEASON_SD } from '@/lib/plan/judgement';
import { HOUR_MS } from '@/lib/time/instant';
import { DUSK, seriesOf } from '@/tests/support/plan-cases';
import { referenceTable } from '@/tests/support/reference-table';

/** Sources of all tables here: tests/fixtures/reference/README.md, "Forecast errors". */
const LOWS = referenceTable('forecast-low-errors.csv').map((row) => ({
  lead: row.number('lead_h'),
  from: row.number('from_c'),
  to: row.number('to_c'),
  nights: row.number('nights'),
  mean: row.number('mean_k'),
  sd: row.number('sd_k'),
  /** Bootstrap over dates; 0.0 is below 0.05. */
  error: Math.max(0.05, row.number('sd_error_k')),
}));

/** The middle of a bin; the coldest nights crowd at its warm end, the warmest at its cold one. */
function middle({ from, to }: (typeof LOWS)[number]): number {
  return 273.15 + (from < -25 ? -28 : to > 0 ? 3 : (from + to) / 2);
}

const FLAT = seriesOf(new Array<number>(60).fill(0));

describe("The stated error of a forecast's temperature", () => {
  it('is as wide as official forecasts of 45 US cities were wrong, at every lead and every cold', () => {
    const differences = LOWS.map((low) => forecastSd(middle(low), low.lead) - low.sd);
    // Three bootstrap errors and the rounding to 0.1 K in any bin, nothing over all.
    for (const [i, difference] of differences.entries())
      expect(Math.abs(difference), JSON.stringify(LOWS[i])).toBeLessThan(3 * LOWS[i]!.error + 0.05);
    const mean = differences.reduce((sum, each) => sum + each, 0) / differences.length;
    expect(Math.abs(mean)).toBeLessThan(0.05);
  });

  it('has no shift for official forecasts: where the forecast itself was cold, they were right on average', () => {
    const cold = LOWS.filter(({ to }) => to <= -10);
    const nights = cold.reduce((sum, each) => sum + each.nights, 0);
    const mean = cold.reduce((sum, each) => sum + each.mean * each.nights, 0) / nights;
    expect(Math.abs(mean)).toBeLessThan(0.15);
    expect(temperatureError({ series: seriesOf([-20, -20]), now: DUSK }).mean(DUSK)).toBe(0);
  });

  it('grows with the days ahead as daily highs of 40 cities did in five winters', () => {
    // Sd of highs 1 to 6 days ahead [K], against one day ahead; to 0.1 K, so a ratio to 0.06.
    const measured = [2.5, 2.8, 3.1, 3.4, 4.0, 4.5];
    for (const [i, sd] of measured.entries()) {
      const growth = forecastSd(280, 24 * (i + 1)) / forecastSd(280, 24);
      expect(Math.abs(growth - sd / 2.5), `${i + 1} days`).toBeLessThan(0.06);
    }
    // Minima about their month's mean: 6.2 K.
    expect(SEASON_SD.at(-1)!.value).toBe(6.2);
  });

  it('lasts as long as those of a 2.5 km model did at 709 Nordic stations', () => {
    const { clock, lasting } = temperatureError({ series: FLAT, now: DUSK });
    for (const [hours, measured] of [
      [3, 0.74],
      [6, 0.53],
      [9, 0.38],
      [12, 0.3],
      [15, 0.26],
      [18, 0.23],
      [24, 0.24],
    ] as const) {
      const apart = clock(DUSK + hours * HOUR_MS) - clock(DUSK);
      expect(Math.abs(lasting + (1 - lasting) * Math.exp(-apart) - measured), `${hours} h`).toBeLessThan(
        0.06,
      );
    }
  });

  it('adds to an ensemble what ensembles on plains and among mountains lacked', () => {
    // Magdeburg, 24 and 48 h: 1.04 to 1.49 K needed; Pacific Northwest 2.8 to 3.2 K, Innsbruck about 3 K.
    expect(ENSEMBLE_FLOOR_SD).toBeGreaterThanOrEqual(1.04);
    expect(ENSEMBLE_FLOOR_SD).toBeLessThanOrEqual(1.49);
    expect(MOUNTAIN_FLOOR_SD).toBeGreaterThanOrEqual(2.8);
    expect(MOUNTAIN_FLOOR_SD).toBeLessThanOrEqual(3.2);
  });
});

describe("The stated error of a forecast's pressure", () => {
  it('is wider than sea-level pressure was wrong, and as wide as most stations were once moved by height', () => {
    const { sd } = pressureError({ series: FLAT, now: DUSK });
    for (const [lead, seaLevel] of [
      [6, 66],
      [24, 71],
      [48, 100],
    ] as const)
      expect(sd(DUSK + lead * HOUR_MS), `${lead} h`).toBeGreaterThan(seaLevel);
    // Moved to station height: 0.9 hPa robust, 2.0 hPa over all.
    expect(sd(DUSK + 24 * HOUR_MS)).toBeGreaterThanOrEqual(90);
    expect(sd(DUSK + 48 * HOUR_MS)).toBeLessThanOrEqual(200);
  });
});
