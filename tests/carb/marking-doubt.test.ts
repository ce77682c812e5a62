import { describe, expect, it } from 'vitest';
import { markingDoubt } from '@/lib/carb/marking-doubt';
import { markingQuestion } from '@/lib/words/marking';

/** Which sizes go with which marking: common practice, no source. */
const doubt = (kind: 'flow' | 'bore', main: number, box: readonly number[] = []) =>
  markingDoubt({
    marking: { kind },
    carburettors: [{ main }],
    box: box.map((size) => ({ size, count: 2 })),
  });

describe('what the number on a jet is said to mean', () => {
  it.each([
    ['a 410 as a hole of 4.10 mm', 410, [], 'bore-too-wide'],
    ['one wide jet in a box that fits', 162.5, [160, 162.5, 300], 'bore-too-wide'],
    ['a 38 as a hole of 0.38 mm', 38, [], 'bore-too-narrow'],
    ['bores in steps of 10', 150, [140, 150, 160], 'bore-in-tens'],
  ] as const)('is questioned: %s', (_, main, box, code) => {
    expect(doubt('bore', main, box)?.code).toBe(code);
  });

  it.each([
    ['steps of 2.5', 162.5, [160, 165]],
    ['steps of 2 and 3', 170, [165, 168, 170, 172]],
    ['one odd size', 98, []],
  ] as const)('is questioned for flow: %s', (_, main, box) => {
    expect(doubt('flow', main, box)?.code).toBe('flow-between-fives');
  });

  it.each([
    ['bore', 162.5, [160, 162.5, 165]],
    ['bore', 170, [165, 168, 170, 172]],
    ['bore', 180, []],
    ['flow', 410, [380, 390, 400, 410, 420]],
    ['flow', 185, [175, 180, 185, 190]],
    ['flow', 412.5, [410, 412.5, 415]],
    ['flow', 45, []],
  ] as const)('is not where nothing speaks against it: %s %d', (kind, main, box) => {
    expect(doubt(kind, main, box)).toBeNull();
  });

  it('is not questioned on a list of one’s own', () => {
    const jets = [
      { size: 160, area: 1 },
      { size: 410, area: 2 },
    ];
    expect(
      markingDoubt({ marking: { kind: 'list', jets }, carburettors: [{ main: 410 }], box: [] }),
    ).toBeNull();
  });

  it('asks with the hole in millimetres', () => {
    expect(markingQuestion({ code: 'bore-too-wide', size: 410 })).toBe(
      'Marked by bore, a 410 has a hole of 4.10 mm. Main jets have holes of about 0.5 to 2.5 mm. Is 410 its flow?',
    );
    expect(markingQuestion({ code: 'flow-between-fives', size: 162.5 })).toMatch(
      /a 162.5 a hole of 1.6[23] mm/,
    );
  });
});
