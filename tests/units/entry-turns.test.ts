import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { readTurns } from '@/lib/units/entry-turns';
import { formatEighths } from '@/lib/units/format';

describe('turns as riders write them', () => {
  it.each([
    ['1.25', 1.25],
    ['1,25', 1.25],
    ['.5', 0.5],
    ['2', 2],
    ['3/4', 0.75],
    ['3 / 4', 0.75],
    ['5/4', 1.25],
    ['2 1/4', 2.25],
    ['2-1/4', 2.25],
    ['2\u20131/4', 2.25],
    ['2 + 1/4', 2.25],
    ['2 and 1/4', 2.25],
    ['1 7/8', 1.875],
    ['2\u00bc', 2.25],
    ['2 \u00bc', 2.25],
    ['\u00be', 0.75],
    ['1\u215b', 1.125],
    ['1\u2044 2', 0.5],
    ['1\u22152', 0.5],
    ['１　１／２', 1.5],
    ['1\u00bd turns out', 1.5],
    ['1 turn', 1],
    ['1.5 out', 1.5],
    ['2 1/2 TURNS OUT ', 2.5],
  ])('%j is %d', (text, expected) => {
    expect(expectOk(readTurns(text))).toBeCloseTo(expected, 12);
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['turns', 'empty'],
    ['1/0', 'not-a-number'],
    ['0/0', 'not-a-number'],
    ['1 5/4', 'not-a-number'],
    ['1/2/3', 'not-a-number'],
    ['1//2', 'not-a-number'],
    ['/4', 'not-a-number'],
    ['2 1/', 'not-a-number'],
    ['one and a half', 'not-a-number'],
    ['1.5/2', 'not-a-number'],
    ['\u00bd\u00bd', 'not-a-number'],
    ['1e400', 'too-large'],
  ])('%j is refused as %s', (text, code) => {
    expect(readTurns(text)).toMatchObject({ ok: false, reason: { code } });
  });

  it('reads back whatever a page shows in eighths', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 }), (eighths) => {
        expect(expectOk(readTurns(formatEighths(eighths / 8)))).toBe(eighths / 8);
      }),
    );
  });
});
