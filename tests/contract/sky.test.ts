import { describe, expect, test } from 'vitest';
import { hourSchema } from '@/lib/contract/event';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import { skyFromJson, skyToJson } from '@/lib/contract/sky';
import { expectOk } from '@/lib/result/result';

const TOLD = { rawModel: true, cloudCover: 0, windMs: 1.5, snowDepthM: 0, daylight: false };

describe('The sky of an hour as JSON', () => {
  test('goes there and back, nothing taken for zero and zero kept', () => {
    for (const json of [TOLD, {}, { rawModel: false }, { cloudCover: 0.3 }, { windMs: 0 }]) {
      expect(skyToJson(skyFromJson(json))).toEqual(json);
      const more = { ...json, time: 'other fields stay behind' };
      expect(skyToJson(skyFromJson(more))).toEqual(json);
    }
    expect(skyFromJson({})).toEqual({});
  });

  test('comes with an hour that was sent', () => {
    const hour = hourSchema.parse({ time: '2027-01-16T20:00:00-06:00', temperatureC: -15, ...TOLD });
    const [read] = expectOk(seriesFromJson([hour], 240)).hours;
    expect(read).toMatchObject({
      rawModel: true,
      sky: { cloudCover: 0, wind: 1.5, snowDepth: 0, daylight: false },
    });
  });
});
