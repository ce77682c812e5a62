import { describe, expect, it } from 'vitest';
import { fuelDensityRatio, volumeCorrectionFactor } from '@/lib/carb/fuel-density';
import {
  blendAirFuel,
  blendDensity,
  ETHANOL,
  type FuelFormula,
  logFuelShift,
  PETROL,
  stoichiometricAirFuel,
} from '@/lib/carb/fuel-mixture';
import { celsiusToKelvin } from '@/lib/units/convert';
import { density, kelvinDifference, ratio } from '@/lib/units/quantity';

describe('petrol and temperature, ASTM D1250-80 / API MPMS 11.1 Table 54B', () => {
  // VCF of petrol of 740 kg/m³ at 15 °C, from the table's coefficients, computed apart from this code to five digits.
  it.each([
    [-40, 1.06585],
    [-20, 1.04229],
    [0, 1.01828],
    [15, 1],
    [30, 0.98152],
    [40, 0.9691],
  ])('at %d °C it is %d of its density at 15 °C', (celsius, factor) => {
    expect(Math.abs(volumeCorrectionFactor(celsiusToKelvin(celsius)) - factor)).toBeLessThan(1e-5);
  });

  it.each([
    [720, 1.278e-3],
    [740, 1.226e-3],
    [760, 1.177e-3],
  ])('petrol of %d kg/m³ grows by %d per kelvin at 15 °C', (kgPerM3, perKelvin) => {
    const warm = volumeCorrectionFactor(celsiusToKelvin(15.01), density(kgPerM3));
    const cold = volumeCorrectionFactor(celsiusToKelvin(14.99), density(kgPerM3));
    expect(Math.abs(Math.log(cold / warm) / 0.02 - perKelvin)).toBeLessThan(1e-6);
  });

  it('from 15 to -20 °C the same jet passes 2.1 % more by density alone', () => {
    const option = { offset: kelvinDifference(0), baselineTemperature: celsiusToKelvin(15) };
    const more = Math.sqrt(fuelDensityRatio(option, celsiusToKelvin(-20))) - 1;
    expect(Math.abs(more - 0.021)).toBeLessThan(1e-3);
  });

  it('a tank that stays 5 K warmer than the air counts by its own temperature', () => {
    const option = { offset: kelvinDifference(5), baselineTemperature: celsiusToKelvin(-15) };
    expect(fuelDensityRatio(option, celsiusToKelvin(-20))).toBeCloseTo(1, 12);
  });

  it('by default fuel density is held', () => {
    expect(fuelDensityRatio(null, celsiusToKelvin(-30))).toBe(1);
  });
});

describe('air to burn a fuel', () => {
  // Combustion arithmetic with air of 28.9647 g/mol and 20.946 % oxygen; handbooks print 14.6, 15.1, 9.0 and 6.45
  // (from memory). Half of the second digit, and what the choice of air constants moves.
  it.each<[string, FuelFormula, number]>([
    ['petrol CH1.87', PETROL, 14.6],
    ['petrol CH1.85', { hydrogen: 1.85, oxygen: 0 }, 14.58],
    ['iso-octane', { hydrogen: 18 / 8, oxygen: 0 }, 15.13],
    ['ethanol', ETHANOL, 9.0],
    ['methanol', { hydrogen: 4, oxygen: 1 }, 6.47],
  ])('%s', (_, formula, airFuel) => {
    expect(Math.abs(stoichiometricAirFuel(formula) - airFuel)).toBeLessThan(0.01);
  });

  // Mass-weighted with petrol of 740 and ethanol of 789 kg/m³, shares by volume; same arithmetic.
  it.each([
    [0.05, 14.31],
    [0.1, 14.01],
    [0.15, 13.72],
    [0.2, 13.43],
    [0.85, 9.8],
  ])('with %d of ethanol it is %d', (share, airFuel) => {
    expect(Math.abs(blendAirFuel(ratio(share)) - airFuel)).toBeLessThan(0.01);
  });

  it('pure petrol and pure ethanol are the ends of the scale', () => {
    expect(blendAirFuel(ratio(0))).toBe(stoichiometricAirFuel(PETROL));
    expect(blendAirFuel(ratio(1))).toBeCloseTo(stoichiometricAirFuel(ETHANOL), 12);
    expect(blendDensity(ratio(1))).toBe(789);
  });
});

describe('what an ethanol share does to the main', () => {
  it('petrol to E10: 4.1 % more fuel by mass, of which the denser blend brings 0.3 % by itself', () => {
    // ln(14.60/14.01) − ½ ln(744.9/740) by hand = 0.0413 − 0.0033; the ratios are rounded to 0.04 %.
    expect(Math.abs(logFuelShift({ from: ratio(0), to: ratio(0.1) }) - 0.038)).toBeLessThan(7e-4);
  });

  it('petrol to E85 asks for 45 % more jet area', () => {
    // ln(14.60/9.80) − ½ ln(781.65/740) by hand = 0.3986 − 0.0274 = 0.3712; 9.80 is rounded to 0.05 %.
    expect(Math.abs(logFuelShift({ from: ratio(0), to: ratio(0.85) }) - 0.3712)).toBeLessThan(1e-3);
  });

  it('a share that stays shifts nothing', () => {
    expect(logFuelShift({ from: ratio(0.1), to: ratio(0.1) })).toBe(0);
  });
});
