import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  elevationFrom,
  elevationIn,
  pressureFrom,
  pressureIn,
  temperatureFrom,
  temperatureIn,
  temperatureStepIn,
} from '@/lib/units/choice';
import {
  celsiusToKelvin,
  fahrenheitStepToKelvin,
  fahrenheitToKelvin,
  horsepowerToWatt,
  inchOfMercuryToPascal,
  kelvinToCelsius,
  kelvinToFahrenheit,
  kilometrePerHourToSpeed,
  millimetreOfMercuryToPascal,
  wattToHorsepower,
} from '@/lib/units/convert';
import {
  density,
  type Kelvin,
  kelvin,
  kelvinDifference,
  metre,
  type Pascal,
  pascal,
  ratio,
  second,
  speedMs,
  watt,
} from '@/lib/units/quantity';

describe('a quantity', () => {
  it('is never NaN or infinite', () => {
    for (const make of [kelvin, kelvinDifference, pascal, metre, density, ratio, second, speedMs, watt])
      for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
        expect(() => make(value)).toThrow(RangeError);
  });

  it('cannot stand in for another: a pressure is no temperature, a bare number neither', () => {
    expectTypeOf<Pascal>().not.toExtend<Kelvin>();
    expectTypeOf<number>().not.toExtend<Kelvin>();
    expectTypeOf<Kelvin>().toExtend<number>();
  });
});

describe('conversions', () => {
  it('meet at the fixed points of the scales', () => {
    expect(celsiusToKelvin(0)).toBe(273.15);
    expect(kelvinToFahrenheit(celsiusToKelvin(100))).toBeCloseTo(212, 10);
    expect(fahrenheitToKelvin(32)).toBe(273.15);
    // The two scales meet at -40.
    expect(kelvinToCelsius(fahrenheitToKelvin(-40))).toBeCloseTo(-40, 10);
    expect(fahrenheitStepToKelvin(9)).toBe(5);
  });

  it('follow NIST SP 811 (2008), appendix B.8', () => {
    expect(inchOfMercuryToPascal(1)).toBe(3386.389);
    expect(millimetreOfMercuryToPascal(1)).toBe(133.3224);
    expect(horsepowerToWatt(1)).toBe(745.6999);
    expect(elevationFrom(1, 'ft')).toBe(0.3048);
    expect(kilometrePerHourToSpeed(3.6)).toBeCloseTo(1, 12);
  });

  it('go there and back', () => {
    const value = fc.double({ min: -500, max: 5000, noNaN: true });
    fc.assert(
      fc.property(value, (x) => {
        for (const unit of ['F', 'C'] as const)
          expect(temperatureIn(temperatureFrom(x, unit), unit)).toBeCloseTo(x, 9);
        for (const unit of ['inHg', 'hPa', 'kPa', 'mbar'] as const)
          expect(pressureIn(pressureFrom(x, unit), unit)).toBeCloseTo(x, 9);
        for (const unit of ['ft', 'm'] as const)
          expect(elevationIn(elevationFrom(x, unit), unit)).toBeCloseTo(x, 9);
        expect(temperatureStepIn(fahrenheitStepToKelvin(x), 'F')).toBeCloseTo(x, 9);
        expect(wattToHorsepower(horsepowerToWatt(x))).toBeCloseTo(x, 9);
      }),
      { numRuns: 200, seed: 31 },
    );
  });
});
