import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHEET_NEEDS, type SheetNeed, sheetPages } from '@/lib/share/sheet-pages';
import { sheetPaper } from '@/lib/share/sheet-paper';

const FOUR = { columns: 2, rows: 2 };
const cells = (count: number): readonly SheetNeed[] => Array(count).fill('cell');
const counts = (needs: readonly SheetNeed[], grid = FOUR) =>
  sheetPages(needs, grid).map(({ sheets }) => sheets.length);

const GRID = fc.constantFrom(
  { columns: 1, rows: 1 },
  { columns: 2, rows: 1 },
  { columns: 1, rows: 2 },
  { columns: 2, rows: 2 },
);

describe('sheets over pages', () => {
  it('fill every page to its last cell, each sheet once and none over another', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...SHEET_NEEDS), { minLength: 1, maxLength: 30 }),
        GRID,
        (needs, grid) => {
          const pages = sheetPages(needs, grid);
          const shown = pages.flatMap(({ sheets }) => sheets.map(({ sheet }) => sheet));
          expect([...shown].sort((a, b) => a - b)).toEqual(needs.map((_, i) => i));
          for (const { sheets, more } of pages) {
            const taken = sheets.flatMap(({ column, row, across, down }) =>
              Array.from(
                { length: across * down },
                (_, i) => `${column + (i % across)} ${row + Math.floor(i / across)}`,
              ),
            );
            const every = Array.from(
              { length: grid.columns * grid.rows },
              (_, i) => `${i % grid.columns} ${Math.floor(i / grid.columns)}`,
            );
            expect([...taken].sort()).toEqual(every.sort());
            expect(more).toBe(sheets.some(({ sheet }) => needs[sheet] === 'more'));
          }
        },
      ),
    );
  });

  it('give no sheet less than it needs', () => {
    const size = ({ across, down }: { readonly across: number; readonly down: number }) => across * down;
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...SHEET_NEEDS), { maxLength: 20 }), (needs) => {
        for (const placed of sheetPages(needs, FOUR).flatMap(({ sheets }) => sheets)) {
          const least = { cell: 1, row: 2, page: 4, more: 4 }[needs[placed.sheet]!];
          expect(size(placed)).toBeGreaterThanOrEqual(least);
        }
      }),
    );
  });

  it('leave no racer alone on the last page where another can join', () => {
    expect(counts(cells(4))).toEqual([4]);
    expect(counts(cells(5))).toEqual([3, 2]);
    expect(counts(cells(9))).toEqual([4, 3, 2]);
    expect(counts(cells(40))).toEqual(Array(10).fill(4));
    expect(counts(cells(41))).toEqual([...Array(9).fill(4), 3, 2]);
    expect(counts(cells(1))).toEqual([1]);
    // Three on pages of two: the third has a page of its own, all of it.
    expect(sheetPages(cells(3), { columns: 2, rows: 1 }).at(-1)?.sheets).toEqual([
      { sheet: 2, column: 0, row: 0, across: 2, down: 1 },
    ]);
  });
});

it('cuts a page into sheets of one shape', () => {
  // ISO 216: an A4 page gives two of A5 or four of A6.
  const cell = (size: 'a4' | 'letter', up: 1 | 2 | 4) => {
    const { width, height, columns, rows } = sheetPaper(size, up, 'upright');
    return [width / columns, height / rows];
  };
  expect(cell('a4', 1)).toEqual([210, 297]);
  expect(cell('a4', 2)).toEqual([148.5, 210]);
  expect(cell('a4', 4)).toEqual([105, 148.5]);
  // ANSI/ASME Y14.1: Letter is 8.5 by 11 in, 215.9 by 279.4 mm.
  expect(cell('letter', 1)).toEqual([215.9, 279.4]);
  expect(cell('letter', 4)).toEqual([107.95, 139.7]);
  expect(sheetPaper('a4', 2, 'across')).toMatchObject({ width: 210, height: 297, columns: 1, rows: 2 });
});
