import { describe, expect, it } from 'vitest';
import { pressureError, sdAtLead, temperatureError } from '@/lib/plan/forecast-error';
import { TEMPERATURE_SD_BY_LEAD } from '@/lib/plan/judgement';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { kelvinDifference } from '@/lib/units/quantity';
import { clock, DUSK, hour, seriesOf } from '@/tests/support/plan-cases';

const FLAT = seriesOf(new Array<number>(80).fill(-10));

describe('The error of a forecast', () => {
  it('has the sizes that are written down, by lead time, in straight lines between', () => {
    const { sd } = temperatureError({ series: FLAT, now: DUSK });
    for (const [lead, size] of [
      [0, 2],
      [6, 2],
      [24, 2.2],
      [36, 2.35],
      [48, 2.5],
      [72, 3],
    ] as const)
      expect(sd(DUSK + lead * HOUR_MS), `${lead} h`).toBeCloseTo(size, 12);
    expect(sdAtLead(TEMPERATURE_SD_BY_LEAD, -5)).toBe(2);
    expect(sdAtLead(TEMPERATURE_SD_BY_LEAD, 1000)).toBe(4);
  });

  it('counts lead from when the forecast was made, and from now where nobody knows', () => {
    const issued = instant(DUSK - 18 * HOUR_MS);
    const old = { ...FLAT, source: { ...FLAT.source, issuedAt: issued } };
    expect(temperatureError({ series: old, now: DUSK }).sd(clock(23))).toBeCloseTo(2.2, 12);
    const typed = { ...FLAT, source: { ...FLAT.source, issuedAt: null, fetchedAt: null } };
    expect(temperatureError({ series: typed, now: clock(20) }).sd(clock(26))).toBeCloseTo(2, 12);
  });

  it('takes an ensemble for too narrow: a spread of 2 K means 2.5 K', () => {
    const series = { ...FLAT, hours: FLAT.hours.map((each) => ({ ...each, spread: kelvinDifference(2) })) };
    expect(temperatureError({ series, now: DUSK }).sd(clock(20))).toBeCloseTo(2.5, 12);
    const half = {
      ...FLAT,
      hours: [hour(clock(17), -5, { spread: kelvinDifference(2) }), hour(clock(18), -5)],
    };
    expect(temperatureError({ series: half, now: DUSK }).sd(clock(17.5))).toBeCloseTo(2.25, 12);
  });

  it('is forgotten to 1/e in four hours, in two across a sunset, and never faster for two sun times at once', () => {
    const calm = temperatureError({ series: FLAT, now: DUSK });
    expect(calm.clock(clock(24)) - calm.clock(clock(20))).toBeCloseTo(1, 12);
    const sunset = temperatureError({ series: FLAT, now: DUSK, sun: [clock(20)] });
    expect(sunset.clock(clock(21)) - sunset.clock(clock(19))).toBeCloseTo(1, 12);
    expect(sunset.clock(clock(27)) - sunset.clock(clock(23))).toBeCloseTo(1, 12);
    const both = temperatureError({ series: FLAT, now: DUSK, sun: [clock(20.5), clock(20)] });
    expect(both.clock(clock(21)) - both.clock(clock(19))).toBeCloseTo(1, 12);
  });

  it('of pressure is small and lasts, and wide where pressure is only the standard atmosphere', () => {
    const measured = pressureError({ series: FLAT, now: DUSK });
    expect(measured.sd(clock(20))).toBe(100);
    expect(measured.clock(clock(29)) - measured.clock(clock(17))).toBeCloseTo(0.5, 12);
    const guessed = {
      ...FLAT,
      hours: FLAT.hours.map((each) => ({ ...each, pressureFrom: 'standard' as const })),
    };
    expect(pressureError({ series: guessed, now: DUSK }).sd(clock(20))).toBe(1000);
  });
});
