import { describe, expect, it } from 'vitest';
import { boxText, readBoxText } from '@/lib/carb/box-text';
import { expectOk } from '@/lib/result/result';
import { boxProblemWords } from '@/lib/words/box-text';

describe('a box as typed', () => {
  it('reads sizes with how many of each, however the count is written', () => {
    const box = [
      { size: 400, count: 3 },
      { size: 410, count: 3 },
      { size: 420, count: 1 },
    ];
    for (const text of [
      '400x3 410x3 420',
      '400 x 3, 410 X 3, 420',
      '420;410×3;400*3',
      '400 (3)\n410(3)\n420',
      '400 400 400 410 410x2 420',
      '400,400,400,410x3,420',
    ])
      expect(expectOk(readBoxText(text)), text).toEqual(box);
  });

  it('tells a decimal comma from a comma between jets', () => {
    expect(expectOk(readBoxText('162,5x2 165'))).toEqual([
      { size: 162.5, count: 2 },
      { size: 165, count: 1 },
    ]);
  });

  it('says which piece is no jet', () => {
    expect(readBoxText('400x3 big')).toEqual({ ok: false, reason: { code: 'not-a-jet', text: 'big' } });
    expect(readBoxText('  ')).toEqual({ ok: false, reason: { code: 'empty' } });
    expect(readBoxText('400x0')).toEqual({ ok: false, reason: { code: 'not-a-jet', text: '400x0' } });
    expect(readBoxText('-400')).toEqual({ ok: false, reason: { code: 'not-a-jet', text: '-400' } });
  });

  it('notices a size and a count that were swapped', () => {
    const swapped = readBoxText('3x400');
    expect(swapped.ok ? '' : boxProblemWords(swapped.reason)).toContain('400x3');
  });

  it('writes a box so that it reads back the same', () => {
    const box = expectOk(readBoxText('380x2 390 162.5x9'));
    expect(expectOk(readBoxText(boxText(box)))).toEqual(box);
  });
});
