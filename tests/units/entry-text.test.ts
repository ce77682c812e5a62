import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import {
  readElevation,
  readPercent,
  readPressure,
  readTemperature,
  readTemperatureStep,
} from '@/lib/units/entry';
import {
  elevationText,
  numberText,
  percentText,
  pressureText,
  temperatureStepText,
  temperatureText,
  withoutDust,
} from '@/lib/units/entry-text';
import { kelvinDifference, metre, ratio } from '@/lib/units/quantity';

describe('a text to be edited', () => {
  it('has no unit, no thousands mark and no tail of nines', () => {
    expect(temperatureText(celsiusToKelvin(-20), US_UNITS)).toBe('-4');
    expect(temperatureText(celsiusToKelvin(-20), METRIC_UNITS)).toBe('-20');
    expect(elevationText(metre(1600), METRIC_UNITS)).toBe('1600');
    // 1013.25 hPa / 33.86389 hPa (NIST SP 811, appendix B.8) = 29.9213 inHg
    expect(pressureText(hectopascalToPascal(1013.25), US_UNITS)).toBe('29.9213');
    expect(percentText(ratio(0.07))).toBe('7');
    expect(numberText(-0.00000001)).toBe('0');
  });

  it('reads back as the quantity it stands for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 50, noNaN: true }),
        fc.double({ min: 500, max: 1080, noNaN: true }),
        fc.constantFrom(US_UNITS, METRIC_UNITS),
        (celsius, hpa, units) => {
          const t = celsiusToKelvin(celsius);
          const p = hectopascalToPascal(hpa);
          const h = metre(hpa);
          const step = kelvinDifference(celsius);
          expect(expectOk(readTemperature(temperatureText(t, units), units.temperature))).toBeCloseTo(t, 3);
          expect(
            expectOk(readTemperatureStep(temperatureStepText(step, units), units.temperature)),
          ).toBeCloseTo(step, 3);
          // Four decimals of an inch of mercury are 0.34 Pa, of which half can be lost.
          expect(Math.abs(expectOk(readPressure(pressureText(p, units), units.pressure)) - p)).toBeLessThan(
            0.18,
          );
          expect(expectOk(readElevation(elevationText(h, units), units.elevation))).toBeCloseTo(h, 2);
          expect(expectOk(readPercent(percentText(ratio(hpa / 1080))))).toBeCloseTo(hpa / 1080, 7);
        },
      ),
    );
  });

  it('says nothing more after going through kelvin and back', () => {
    expect(withoutDust(celsiusToKelvin(-20) - 273.15)).toBe(-20);
  });
});
