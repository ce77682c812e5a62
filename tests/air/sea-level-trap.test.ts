import { describe, expect, it } from 'vitest';
import { airFrom } from '@/lib/air/air-from';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import { pascalToHectopascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { altimeter, givenAir, relative, seaLevel, station } from '../support/air';

const codeOf = (pressure: ReturnType<typeof station>, celsius = -10): string | null => {
  const air = airFrom(givenAir(celsius, pressure, relative(0.7)));
  return air.ok ? null : air.reason.code;
};

describe('a sea-level number typed as station pressure', () => {
  it('is caught at 1600 m: 1015 hPa there would be a sea-level pressure of 1230', () => {
    const air = airFrom(givenAir(-10, station(1015, 1600), relative(0.7)));
    expect(air).toMatchObject({
      ok: false,
      reason: { code: 'sea-level-number-as-station', pressure: 101_500, elevation: 1600 },
    });
    // What it would be as a sea-level pressure: about 825 hPa (WMO-No. 8 reduction at -10 °C).
    if (!air.ok && air.reason.code === 'sea-level-number-as-station')
      expect(air.reason.stationIfSeaLevel / 100).toBeCloseTo(825, -1);
  });

  it.each([800, 1000, 1600, 2300, 3000])('is caught for every usual number at %d m', (elevation) => {
    for (const hpa of [995, 1005, 1013.25, 1015, 1030, 1045])
      expect(codeOf(station(hpa, elevation))).toBe('sea-level-number-as-station');
  });

  it('is caught from about 500 m up for the most usual of them', () => {
    expect(codeOf(station(1013.25, 500))).toBe('sea-level-number-as-station');
    expect(codeOf(station(1013.25, 470))).toBeNull();
  });

  it('cannot be told from real weather low down, and is let through', () => {
    for (const elevation of [-86, 0, 50, 100, 200])
      for (const hpa of [985, 1005, 1013, 1035]) expect(codeOf(station(hpa, elevation))).toBeNull();
  });

  it('without an elevation cannot be caught', () => {
    expect(codeOf(station(1015))).toBeNull();
  });

  it('is no trap as what it is', () => {
    expect(codeOf(altimeter(1015, 1600))).toBeNull();
    expect(codeOf(seaLevel(1015, 1600))).toBeNull();
  });
});

describe('real weather', () => {
  it('of ±50 hPa at sea level, scaled to the place, always passes as station pressure', () => {
    for (let elevation = -100; elevation <= 5000; elevation += 100)
      for (const weather of [-50, -30, 0, 30, 50]) {
        const standard = pascalToHectopascal(standardPressure(metre(elevation)));
        expect(codeOf(station(standard * (1 + weather / 1013.25), elevation))).toBeNull();
      }
  });

  it('of the records passes: 925 hPa and 1070 hPa by the sea', () => {
    expect(codeOf(station(925, 5))).toBeNull();
    expect(codeOf(station(1070, 5))).toBeNull();
  });
});

describe('the same slip the other way', () => {
  it('a station pressure typed as altimeter setting or sea-level pressure on a mountain is refused', () => {
    expect(codeOf(altimeter(835, 1600))).toBe('pressure-out-of-range');
    expect(codeOf(seaLevel(775, 2317))).toBe('pressure-out-of-range');
  });

  it('a pressure from a mountain at an elevation of 0 m is refused: one of the two is wrong', () => {
    const air = airFrom(givenAir(-10, station(835, 0), relative(0.7)));
    expect(air).toMatchObject({
      ok: false,
      reason: { code: 'pressure-too-low-for-elevation', pressure: 83_500, elevation: 0, standard: 101_325 },
    });
  });
});
