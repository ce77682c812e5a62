import { describe, expect, test } from 'vitest';
import { airAnswer, airAnswerSchema } from '@/lib/contract/air-answer';
import { type AirJson, airFromJson, lacksHumidity } from '@/lib/contract/air-from-json';
import { pathText } from '@/lib/contract/problem';
import { expectOk } from '@/lib/result/result';
import { celsiusToKelvin } from '@/lib/units/convert';

const refused = (json: AirJson) => {
  const air = airFromJson(json, ['baseline', 'air']);
  if (air.ok) throw new Error('expected a problem');
  return air.reason.map(({ path, reason }) => [pathText(path), reason.code]);
};

describe('Air as it is sent', () => {
  test('keeps what its pressure came from', () => {
    const from = (json: Partial<AirJson>) =>
      expectOk(airFromJson({ temperatureC: 15, relativeHumidity: 0, ...json })).pressureFrom;
    expect(from({ pressureHpa: 990 })).toBe('station');
    expect(from({ altimeterHpa: 1013.25, elevationM: 1600 })).toBe('altimeter');
    expect(from({ seaLevelHpa: 1013.25, elevationM: 1600 })).toBe('sea-level');
    expect(from({ elevationM: 1600 })).toBe('standard');
  });

  // ISO 2533:1975, table by geopotential altitude, 1500 m: 845.560 hPa. Geometric against geopotential height is
  // 0.35 m at 1500 m, 0.004 % of pressure, so 0.01 % holds either way.
  test('with an elevation alone stands in the standard atmosphere', () => {
    const air = expectOk(airFromJson({ temperatureC: 0, elevationM: 1500 }));
    expect(Math.abs(air.pressure / 84_556 - 1)).toBeLessThan(1e-4);
  });

  test('takes dew point and frost point for the humidity they are', () => {
    const humidity = (json: Partial<AirJson>) =>
      expectOk(airFromJson({ temperatureC: -8, pressureHpa: 990, ...json }));
    expect(humidity({ dewPointC: -8 }).relativeHumidity).toBeCloseTo(1, 6);
    expect(humidity({ frostPointC: -12 }).frostPoint).toBeCloseTo(celsiusToKelvin(-12), 3);
  });

  test('points at the field that is wrong', () => {
    expect(refused({ temperatureC: -8, pressureHpa: 1015, elevationM: 1600 })).toEqual([
      ['baseline.air.pressureHpa', 'sea-level-number-as-station'],
    ]);
    expect(refused({ temperatureC: 2, pressureHpa: 990, dewPointC: 8 })).toEqual([
      ['baseline.air.dewPointC', 'dew-point-above-temperature'],
    ]);
    expect(refused({ temperatureC: 2, seaLevelHpa: 700, elevationM: 1600 })).toEqual([
      ['baseline.air.seaLevelHpa', 'pressure-out-of-range'],
    ]);
    expect(refused({ temperatureC: 2 })).toEqual([['baseline.air.pressureHpa', 'field']]);
  });

  test('knows when its humidity had to be assumed', () => {
    expect(lacksHumidity({ temperatureC: 2, pressureHpa: 990 })).toBe(true);
    expect(lacksHumidity({ temperatureC: 2, pressureHpa: 990, relativeHumidity: 0 })).toBe(false);
    expect(lacksHumidity({ temperatureC: 2, pressureHpa: 990, dewPointC: 0 })).toBe(false);
  });

  test('goes out by its own schema, dry air included', () => {
    const answer = airAnswer(
      expectOk(airFromJson({ temperatureC: 20, pressureHpa: 1013.25, relativeHumidity: 0 })),
    );
    expect(airAnswerSchema.parse(answer)).toEqual(answer);
    expect(answer).toMatchObject({
      temperatureC: 20,
      dewPointC: null,
      frostPointC: null,
      vapourPressureHpa: 0,
    });
    expect(answer.dryDensityKgM3).toBe(answer.densityKgM3);
  });
});
