import { describe, expect, it } from 'vitest';
import { airAt } from '@/lib/air/air-from';
import { dewPointOf, saturationOverWater } from '@/lib/air/saturation';
import { correctHours } from '@/lib/plan/readings';
import type { Reading } from '@/lib/plan/types';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvin, pascal, ratio } from '@/lib/units/quantity';
import { COLD_NIGHT, clock, DUSK } from '@/tests/support/plan-cases';

function reading(given: Partial<Reading> & { readonly celsius: number }): Reading {
  const { celsius, ...rest } = given;
  return {
    id: 'r1',
    at: clock(19),
    temperature: celsiusToKelvin(celsius),
    stationPressure: null,
    relativeHumidity: null,
    ...rest,
  };
}

function track(readings: readonly Reading[], hours: readonly number[], series = COLD_NIGHT) {
  const corrected = correctHours({ series, readings, now: DUSK });
  return { ...corrected.trackAt(Float64Array.from(hours, clock)), warnings: corrected.warnings };
}

describe('A reading at the track', () => {
  it('moves the rest of the night by the posterior, less and less, and narrows the band', () => {
    // Forecast -8 °C at 19:00 under 12 h ahead, read -11 °C: 3 K off, instrument 0.25. What stays is 22 %, the rest has a
    // memory of 6 h, so the weight is σ²/(σ² + 0.25) times a correlation of 0.22 + 0.78 exp(-h/6).
    const prior = 0.96 ** 2 * (3.8 + 0.235 * 3);
    const after = track([reading({ celsius: -11 })], [19, 20, 23, 31]);
    const before = track([], [19, 20, 23, 31]);
    for (const [i, hours] of [0, 1, 4, 12].entries()) {
      const correlation = 0.22 + 0.78 * Math.exp(-hours / 6);
      const weight = (prior / (prior + 0.25)) * correlation;
      expect(after.temperature[i]! - before.temperature[i]!).toBeCloseTo(
        -3 * weight * (before.temperatureSd[i]! / Math.sqrt(prior)),
        9,
      );
      expect(after.temperatureSd[i]! ** 2).toBeCloseTo(
        before.temperatureSd[i]! ** 2 * (1 - weight * correlation),
        9,
      );
    }
  });

  it('is weighed against the hours that are given, so a new forecast is not corrected twice', () => {
    const read = reading({ celsius: -11 });
    const newer = {
      ...COLD_NIGHT,
      hours: COLD_NIGHT.hours.map((hour) => ({ ...hour, temperature: kelvin(hour.temperature - 3) })),
    };
    const after = track([read], [19, 21], newer);
    expect(after.temperature[0]).toBeCloseTo(celsiusToKelvin(-11), 9);
    expect(after.temperature[1]).toBeCloseTo(celsiusToKelvin(-12.5 - 3), 9);
  });

  it('of temperature alone takes the dew point along', () => {
    const [after, before] = [track([reading({ celsius: -13 })], [20]), track([], [20])];
    const depression = ({ temperature, relativeHumidity }: typeof after) =>
      temperature[0]! -
      dewPointOf(pascal(relativeHumidity[0]! * saturationOverWater(kelvin(temperature[0]!))))!;
    expect(after.temperature[0]).toBeLessThan(before.temperature[0]! - 2);
    expect(depression(after)).toBeCloseTo(depression(before), 6);
    expect(after.relativeHumidity[0]).toBeLessThan(1);
  });

  it('of humidity makes the night drier, and no reading makes it more than saturated', () => {
    const [dry, before] = [
      track([reading({ celsius: -8, relativeHumidity: ratio(0.4) })], [19, 22]),
      track([], [19, 22]),
    ];
    expect(dry.relativeHumidity[0]).toBeLessThan(0.6);
    expect(dry.relativeHumidity[1]).toBeLessThan(before.relativeHumidity[1]!);
    expect(dry.temperature[0]).toBeCloseTo(before.temperature[0]!, 9);
    const wet = track([reading({ celsius: -20, relativeHumidity: ratio(1) })], [19, 20, 21]);
    for (const rh of wet.relativeHumidity) expect(rh).toBeLessThanOrEqual(1);
  });

  it('of pressure holds for the night', () => {
    const read = reading({ celsius: -8, stationPressure: hectopascalToPascal(982) });
    const after = track([read], [19, 27]);
    // 3 hPa off with variance 2 · 0.7² against an instrument of 0.5, kept to exp(-8/24) by three in the morning.
    const variance = 2 * 70 ** 2;
    const weight = variance / (variance + 50 ** 2);
    expect(after.pressure[0]).toBeCloseTo(98_500 - 300 * weight, 6);
    expect(98_500 - after.pressure[1]!).toBeGreaterThan(150);
    expect(after.pressureSd[0]).toBeCloseTo(Math.sqrt(variance * (1 - weight)), 6);
  });

  it('more than 10 K off is asked about and left out until it is confirmed', () => {
    const odd = reading({ celsius: 5, id: 'sun' });
    const asked = track([odd], [20]);
    expect(asked.warnings).toEqual([
      { code: 'reading-far-off', readingId: 'sun', difference: expect.closeTo(13, 9) },
    ]);
    expect(asked.temperature[0]).toBe(track([], [20]).temperature[0]);
    const believed = track([{ ...odd, confirmed: true }], [20]);
    expect(believed.warnings).toEqual([]);
    expect(believed.temperature[0]).toBeGreaterThan(asked.temperature[0]! + 5);
  });

  it('of a sea-level pressure keeps its temperature and loses its pressure', () => {
    const mixed = track(
      [reading({ celsius: -11, stationPressure: hectopascalToPascal(1031), id: 'b' })],
      [19],
    );
    expect(mixed.warnings).toEqual([
      { code: 'reading-pressure-far-off', readingId: 'b', difference: expect.closeTo(4600, 6) },
    ]);
    expect(mixed.pressure[0]).toBeCloseTo(98_500, 6);
    expect(mixed.temperature[0]).toBeLessThan(celsiusToKelvin(-10));
  });

  it('outside the hours says so', () => {
    const early = track([reading({ celsius: -8, at: clock(12), id: 'noon' })], [19]);
    expect(early.warnings).toEqual([{ code: 'reading-outside-hours', readingId: 'noon' }]);
  });
});

describe('The hours without readings', () => {
  it('are what was given, hour by hour, and dry air stays dry', () => {
    const at = COLD_NIGHT.hours.map((_, i) => 17 + i);
    const { temperature, pressure, relativeHumidity } = track([], at);
    for (const [i, hour] of COLD_NIGHT.hours.entries()) {
      expect(temperature[i]).toBe(hour.temperature);
      expect(pressure[i]).toBe(hour.pressure);
      expect(relativeHumidity[i]).toBeCloseTo(hour.relativeHumidity, 9);
    }
    const dry = {
      ...COLD_NIGHT,
      hours: COLD_NIGHT.hours.map((hour) => ({ ...hour, relativeHumidity: ratio(0) })),
    };
    const bone = track([], [20.3], dry);
    expect(bone.relativeHumidity[0]).toBeLessThan(1e-9);
    expect(
      airAt({
        temperature: kelvin(bone.temperature[0]!),
        pressure: pascal(bone.pressure[0]!),
        relativeHumidity: ratio(bone.relativeHumidity[0]!),
        pressureFrom: 'station',
      }).density,
    ).toBeGreaterThan(1.2);
  });
});
