import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { cellOf, findHeads, hasMoreCells, headsOf } from '@/lib/table/columns';
import { cutCells, linesBelow, readTable } from '@/lib/table/read-table';
import { writeTable } from '@/lib/table/write-table';

const LIMITS = { mostCharacters: 200, mostLines: 2, delimiters: [',', ';', '\t'] };
const cellsOf = (text: string) => expectOk(readTable(text, LIMITS)).map(({ cells }) => cells);

describe('a table as text', () => {
  it('is cut at the mark it uses, without blank lines and the mark of UTF-8', () => {
    expect(cellsOf('\uFEFFa;b\r\n\r\n"1,5";2\r\n')).toEqual([
      ['a', 'b'],
      ['1,5', '2'],
    ]);
    expect(cellsOf('a\tb\n1\t2')).toEqual(cellsOf('a,b\n1,2'));
  });

  it('is refused with a reason where it cannot be one', () => {
    const code = (text: string) => {
      const read = readTable(text, LIMITS);
      return read.ok ? null : read.reason.code;
    };
    expect(code('a,b\n"1,2')).toBe('quotes-broken');
    expect(code('x'.repeat(201))).toBe('too-large');
    expect(linesBelow([], LIMITS)).toEqual({ ok: false, reason: { code: 'empty' } });
    const lines = expectOk(readTable('1\n2\n3', LIMITS));
    expect(linesBelow(lines, LIMITS)).toEqual({ ok: false, reason: { code: 'too-many-lines', limit: 2 } });
    expect(cutCells('a,"b', ',')).toBeNull();
  });

  it('keeps its blank lines where each may count', () => {
    expect(cutCells('1\n\n2', ',')).toEqual([['1'], [''], ['2']]);
  });

  it('comes back as it was written (RFC 4180: quotes are doubled, lines end in CR LF)', () => {
    const text = writeTable(['a', 'b'], [['say "no", then', 1.5]]);
    expect(text).toBe('"a","b"\r\n"say ""no"", then",1.5\r\n');
    expect(cellsOf(text)).toEqual([
      ['a', 'b'],
      ['say "no", then', '1.5'],
    ]);
  });
});

describe('the columns of a table', () => {
  const columnOf = (head: string) => (head === 'Time' || head === 'Jet' ? head : null);
  const heads = (cells: readonly string[]) =>
    findHeads<string>(headsOf(cells), { needed: ['Time'], columnOf });

  it('are found by their heads in any order, the others named', () => {
    const columns = expectOk(heads(['Jet', ' Colour ', '', "'=Sum", 'Time']));
    expect(columns.ignored).toEqual(['Colour', '=Sum']);
    expect(cellOf(['410', 'red', '', '', "'=1", ''], columns, 'Time')).toBe('=1');
    expect(cellOf(['410'], columns, 'Time')).toBe('');
    expect(hasMoreCells(['', '', '', '', '', ' '], columns)).toBe(false);
    expect(hasMoreCells(['', '', '', '', '', '7'], columns)).toBe(true);
  });

  it('are refused where one stands twice or is missing', () => {
    expect(heads(['Time', 'Time'])).toEqual({ ok: false, reason: { code: 'column-twice', column: 'Time' } });
    expect(heads(['Jet'])).toEqual({ ok: false, reason: { code: 'columns-missing', columns: ['Time'] } });
  });
});
