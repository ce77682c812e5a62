import { describe, expect, it } from 'vitest';
import {
  altimeterFromStation,
  seaLevelFromStation,
  stationFromAltimeter,
  stationFromSeaLevel,
} from '@/lib/air/pressure';
import { saturationOverWater } from '@/lib/air/saturation';
import {
  celsiusToKelvin,
  feetToMetre,
  hectopascalToPascal,
  inchOfMercuryToPascal,
  pascalToHectopascal,
  pascalToInchOfMercury,
} from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { airOf, altimeter, expectWithin, relative, seaLevel, station } from '../support/air';

const fromAltimeter = (hpa: number, elevationM: number) =>
  pascalToHectopascal(stationFromAltimeter(hectopascalToPascal(hpa), metre(elevationM)));

describe('station pressure from an altimeter setting', () => {
  it('is the standard atmosphere shifted in height, as ICAO defines it', () => {
    // Computed independently from the definition, three decimals: 0.002 hPa.
    for (const [setting, elevation, expected] of [
      [1000, 2000, 784.068],
      [1005, 1500, 838.435],
      [1010, 1000, 895.797],
      [1013, 500, 954.37],
    ] as const)
      expect(Math.abs(fromAltimeter(setting, elevation) - expected)).toBeLessThanOrEqual(0.002);
  });

  it('lies 0.2 to 0.3 hPa under the Smithsonian formula, which adds 0.3 hPa and rounds 288.15 K to 288', () => {
    // MetPy, tests/calc/test_basic.py, after Smithsonian Meteorological Tables (1951), p. 269.
    for (const [setting, elevation, published] of [
      [1009.1438, 500, 950.96498],
      [1000, 2000, 784.262996],
      [1005, 1500, 838.651657],
      [1010, 1000, 896.037821],
      [1013, 500, 954.639265],
    ] as const) {
      const n = (287.05287 * 0.0065) / 9.80665;
      const smithsonian = (setting ** n - (1013.25 ** n * 0.0065 * elevation) / 288) ** (1 / n) + 0.3;
      // Our writing of their formula is theirs ...
      expect(Math.abs(smithsonian - published)).toBeLessThan(0.02);
      // ... and the definition lies below it by the 0.3 hPa, less what 288 K takes off with height.
      expect(published - fromAltimeter(setting, elevation)).toBeGreaterThan(0.15);
      expect(published - fromAltimeter(setting, elevation)).toBeLessThan(0.32);
    }
  });

  it('agrees with the airport formula of the US weather service', () => {
    // ASOS, in weewx, src/weewx/uwxutils.py: 24.692 inHg at 5431 ft is 30.153; MADIS, tests/test_wxformulas.py:
    // 28.0 inHg at 1000 ft is 29.043. Their rounded exponents, 0.1903 and 5.255, are not quite reciprocal and lift
    // every answer by 0.01 %: 0.003 inHg, and half a printed digit.
    const setting = (inHg: number, feet: number) =>
      pascalToInchOfMercury(altimeterFromStation(inchOfMercuryToPascal(inHg), feetToMetre(feet)));
    expect(Math.abs(setting(24.692, 5431) - 30.153)).toBeLessThanOrEqual(0.0035);
    expect(Math.abs(setting(28, 1000) - 29.043)).toBeLessThanOrEqual(0.0035);
  });

  it('differs from scaling the whole profile by up to 0.3 % at 3000 m', () => {
    // weather.gov, El Paso, station pressure form: A ((288 - 0.0065 h)/288)^5.2561, computed independently.
    expectWithin(fromAltimeter(1010, 1000), 895.802, 1e-4);
    expectWithin(fromAltimeter(970, 3000), 671.016, 3.5e-3);
    expect(Math.abs(fromAltimeter(970, 3000) / 671.016 - 1)).toBeGreaterThan(2.5e-3);
  });
});

describe('sea-level pressure', () => {
  /** Column whose vapour pressure is the given one. */
  const column = (elevationM: number, celsius: number, vapourHpa: number) => ({
    elevation: metre(elevationM),
    temperature: celsiusToKelvin(celsius),
    relativeHumidity: ratio((vapourHpa * 100) / saturationOverWater(celsiusToKelvin(celsius))),
  });

  it('is reduced as WMO-No. 8 says', () => {
    // WMO-No. 8 (2018), vol. I, ch. 3; constants in two public modules, values computed independently: 0.001 hPa.
    for (const [stationHpa, elevation, celsius, vapour, expected] of [
      [1012.265, 105, 17.19, 0, 1024.826],
      [1012.265, 105, 17.19, 10, 1024.774],
      [900, 1000, -10, 2.29, 1022.925],
      [900, 1000, 20, 11.7, 1009.327],
    ] as const) {
      const reduced = seaLevelFromStation(
        hectopascalToPascal(stationHpa),
        column(elevation, celsius, vapour),
      );
      expect(Math.abs(pascalToHectopascal(reduced) - expected)).toBeLessThanOrEqual(0.001);
    }
  });

  it('agrees with psychrolib', () => {
    // psychrolib, tests/test_psychrolib_si.py: 101226.5 Pa, 105 m, 17.19 °C is 102484 Pa, dry. Its constants differ
    // from the WMO's by 0.06 % of the 1258 Pa: 1 Pa.
    const reduced = seaLevelFromStation(hectopascalToPascal(1012.265), column(105, 17.19, 0));
    expect(Math.abs(reduced - 102_484)).toBeLessThanOrEqual(1.5);
  });

  it('agrees in the cold with the polytrope that forecast services use', () => {
    // p = p_sea (1 - 0.0065 h/(T + 0.0065 h))^5.25578, T of the hour at the station, no humidity (Open-Meteo, source
    // of Meteorology.swift). The WMO form counts humidity (0.2 hPa at 1000 m and 0 °C) and its constant is 0.06 % under
    // g/R (0.15 hPa at 2000 m): 0.4 hPa, which is 0.04 % of density.
    for (const [elevation, celsius, tolerance] of [
      [200, -15, 0.05],
      [1000, -15, 0.2],
      [2000, -15, 0.4],
      [1000, 0, 0.4],
    ] as const) {
      const T = celsius + 273.15;
      const polytrope = 1015 * (1 - (0.0065 * elevation) / (T + 0.0065 * elevation)) ** 5.25578;
      const ours = pascalToHectopascal(
        stationFromSeaLevel(hectopascalToPascal(1015), {
          elevation: metre(elevation),
          temperature: celsiusToKelvin(celsius),
          relativeHumidity: ratio(0.8),
        }),
      );
      expect(Math.abs(ours - polytrope)).toBeLessThanOrEqual(tolerance);
    }
  });
});

describe('the same air, its pressure given in each way', () => {
  it.each([
    [42, -9, 0.8, 993],
    [500, -25, 0.7, 955],
    [1600, -12, 0.6, 838],
    [2317, -20, 0.75, 775],
    [300, 25, 0.5, 980],
  ])('has the same density within 0.02 % at %d m', (elevation, celsius, humidity, hpa) => {
    const pressure = hectopascalToPascal(hpa);
    const setting = pascalToHectopascal(altimeterFromStation(pressure, metre(elevation)));
    const reduced = pascalToHectopascal(
      seaLevelFromStation(pressure, {
        elevation: metre(elevation),
        temperature: celsiusToKelvin(celsius),
        relativeHumidity: ratio(humidity),
      }),
    );
    const wanted = airOf(celsius, station(hpa, elevation), relative(humidity)).density;
    // To a tenth of a hectopascal, as such numbers are given.
    const rounded = (p: number) => Math.round(p * 10) / 10;
    expectWithin(
      airOf(celsius, altimeter(rounded(setting), elevation), relative(humidity)).density,
      wanted,
      2e-4,
    );
    expectWithin(
      airOf(celsius, seaLevel(rounded(reduced), elevation), relative(humidity)).density,
      wanted,
      2e-4,
    );
  });
});
