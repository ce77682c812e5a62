import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { celsiusToKelvin, feetToMetre, hectopascalToPascal, horsepowerToWatt } from '@/lib/units/convert';
import { readElevation, readPressure, readTemperature } from '@/lib/units/entry';
import {
  formatDensity,
  formatElevation,
  formatNumber,
  formatPercent,
  formatPower,
  formatPressure,
  formatSignedNumber,
  formatSignedPercent,
  formatSignedPower,
  formatTemperature,
  formatTemperatureStep,
  MINUS,
  NO_BREAK_SPACE,
} from '@/lib/units/format';
import { density, kelvinDifference, metre, ratio } from '@/lib/units/quantity';

/** Easier to read in a test: plain space and hyphen for the no-break space and the real minus. */
const plain = (text: string) => text.replaceAll(NO_BREAK_SPACE, ' ').replaceAll(MINUS, '-');

describe('numbers as shown', () => {
  it('show a real minus, a thousands mark and as many decimals as asked', () => {
    expect(formatNumber(-1234.567, 1)).toBe('\u22121,234.6');
    expect(formatNumber(1_234_567)).toBe('1,234,567');
    expect(formatNumber(999)).toBe('999');
    expect(formatNumber(0.05, 2)).toBe('0.05');
  });

  it('never show a minus or a plus before what rounds to zero', () => {
    expect(formatNumber(-0.04, 1)).toBe('0.0');
    expect(formatNumber(-0)).toBe('0');
    expect(formatSignedNumber(0.04, 1)).toBe('0.0');
    expect(formatSignedNumber(-0.04, 1)).toBe('0.0');
  });

  it('show a plus where a sign is wanted', () => {
    expect(plain(formatSignedNumber(2.25, 1))).toBe('+2.3');
    expect(plain(formatSignedNumber(-2.26, 1))).toBe('-2.3');
  });
});

describe('quantities as shown', () => {
  it('keep number and unit on one line', () => {
    expect(formatTemperature(celsiusToKelvin(-20), METRIC_UNITS)).toBe('\u221220.0\u00a0°C');
  });

  it('follow the units of the person', () => {
    expect(plain(formatTemperature(celsiusToKelvin(-20), US_UNITS))).toBe('-4 °F');
    expect(plain(formatTemperature(celsiusToKelvin(-20), METRIC_UNITS, 0))).toBe('-20 °C');
    expect(plain(formatPressure(hectopascalToPascal(1013.25), US_UNITS))).toBe('29.92 inHg');
    expect(plain(formatPressure(hectopascalToPascal(1013.25), METRIC_UNITS))).toBe('1013 hPa');
    expect(plain(formatPressure(hectopascalToPascal(835.2), METRIC_UNITS, 1))).toBe('835.2 hPa');
    expect(plain(formatPressure(hectopascalToPascal(1013), { ...METRIC_UNITS, pressure: 'kPa' }))).toBe(
      '101.3 kPa',
    );
    expect(plain(formatPressure(hectopascalToPascal(990), { ...METRIC_UNITS, pressure: 'mbar' }))).toBe(
      '990 mbar',
    );
    expect(plain(formatElevation(feetToMetre(5250), US_UNITS))).toBe('5,250 ft');
    expect(plain(formatElevation(metre(1600), METRIC_UNITS))).toBe('1,600 m');
    expect(plain(formatElevation(metre(-86), METRIC_UNITS))).toBe('-86 m');
  });

  it('say differences of temperature as differences', () => {
    expect(plain(formatTemperatureStep(kelvinDifference(10), US_UNITS))).toBe('18 °F');
    expect(plain(formatTemperatureStep(kelvinDifference(2.1), METRIC_UNITS))).toBe('2.1 °C');
  });

  it('say shares in percent', () => {
    expect(plain(formatPercent(ratio(0.05)))).toBe('5 %');
    expect(plain(formatPercent(ratio(0.0525), 1))).toBe('5.3 %');
    expect(plain(formatSignedPercent(ratio(0.021)))).toBe('+2.1 %');
    expect(plain(formatSignedPercent(ratio(-0.0004)))).toBe('0.0 %');
  });

  it('say density in kg/m³ and power in horsepower', () => {
    expect(plain(formatDensity(density(1.39528)))).toBe('1.395 kg/m³');
    expect(plain(formatPower(horsepowerToWatt(151.4)))).toBe('151 hp');
    expect(plain(formatSignedPower(horsepowerToWatt(-2.04)))).toBe('-2.0 hp');
  });
});

describe('what is shown', () => {
  it('can be typed back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -700, max: 600 }),
        fc.integer({ min: 4500, max: 11_000 }),
        fc.integer({ min: -430, max: 6000 }),
        fc.constantFrom(US_UNITS, METRIC_UNITS),
        (tenths, tenthsHpa, elevation, units) => {
          const t = celsiusToKelvin(tenths / 10);
          const shown = formatTemperature(t, units, 3);
          // Half of the last digit shown: 0.0005 °F or °C.
          expect(Math.abs(expectOk(readTemperature(shown, 'C')) - t)).toBeLessThanOrEqual(0.000_501);
          const p = hectopascalToPascal(tenthsHpa / 10);
          // 0.005 inHg is 17 Pa; half a hectopascal is 50 Pa.
          expect(Math.abs(expectOk(readPressure(formatPressure(p, units), 'kPa')) - p)).toBeLessThanOrEqual(
            50.001,
          );
          const h = metre(elevation);
          expect(Math.abs(expectOk(readElevation(formatElevation(h, units), 'm')) - h)).toBeLessThanOrEqual(
            0.5,
          );
        },
      ),
      { numRuns: 500, seed: 21 },
    );
  });
});
