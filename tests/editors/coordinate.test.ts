import { describe, expect, it } from 'vitest';
import { readCoordinate, readCoordinatePair } from '@/lib/fields/coordinate';

describe('coordinates as typed', () => {
  it('reads signs, letters, decimal commas and minutes', () => {
    const cases: readonly (readonly [string, 'latitude' | 'longitude', number | null])[] = [
      ['44.9778', 'latitude', 44.9778],
      ['44,9778', 'latitude', 44.9778],
      ['−93.265', 'longitude', -93.265],
      ['93.265 W', 'longitude', -93.265],
      ['W93.265', 'longitude', -93.265],
      ['93.265 E', 'longitude', 93.265],
      ['0', 'latitude', 0],
      // 44° 58' 40.08" = 44 + 58/60 + 40.08/3600 = 44.9778
      ['44°58\'40.08" N', 'latitude', 44.9778],
      ['33°55′ S', 'latitude', -(33 + 55 / 60)],
      ['91', 'latitude', null],
      ['181', 'longitude', null],
      ['44 E', 'latitude', null],
      ['-44 S', 'latitude', null],
      ["44°75'", 'latitude', null],
      ['north', 'latitude', null],
      ['', 'latitude', null],
    ];
    for (const [text, axis, value] of cases) {
      if (value === null) expect(readCoordinate(text, axis), text).toBeNull();
      else expect(readCoordinate(text, axis), text).toBeCloseTo(value, 9);
    }
  });

  it('takes both from one text as a map gives them', () => {
    expect(readCoordinatePair('44.9778, -93.2650')).toEqual({ latitude: '44.9778', longitude: '-93.2650' });
    expect(readCoordinatePair('44.9778,-93.2650')).toEqual({ latitude: '44.9778', longitude: '-93.2650' });
    expect(readCoordinatePair('44.9778 N; 93.265 W')).toEqual({
      latitude: '44.9778 N',
      longitude: '93.265 W',
    });
    expect(readCoordinatePair('44,9778')).toBeNull();
    expect(readCoordinatePair('44.9778')).toBeNull();
    expect(readCoordinatePair('144.9, -93.2')).toBeNull();
  });
});
