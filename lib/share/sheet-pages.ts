import type { SheetPaper } from './sheet-paper';

/**
 * How much of a page a sheet needs: a cell, a whole row of cells, all of the page, or more than one page. Ordered by
 * size.
 */
export const SHEET_NEEDS = ['cell', 'row', 'page', 'more'] as const;

export type SheetNeed = (typeof SHEET_NEEDS)[number];

/** Where a sheet stands: counted from 0, with how many cells it takes. */
export type PlacedSheet = {
  readonly sheet: number;
  readonly column: number;
  readonly row: number;
  readonly across: number;
  readonly down: number;
};

/** One page of sheets; `more` where its only sheet goes on over further pages. */
export type SheetPage = { readonly sheets: readonly PlacedSheet[]; readonly more: boolean };

type Grid = Pick<SheetPaper, 'columns' | 'rows'>;
type Wanted = { readonly sheet: number; readonly need: SheetNeed };

/**
 * Sheets in their order over pages. No page is left half empty: where fewer sheets than cells come together they are
 * made larger, and one that would stay alone on the last page takes another to itself.
 */
export function sheetPages(needs: readonly SheetNeed[], grid: Grid): readonly SheetPage[] {
  const pages: Wanted[][] = [];
  for (const [sheet, need] of needs.entries()) {
    const last = pages.at(-1);
    if (last !== undefined && rowsOf([...last, { sheet, need }], grid) <= grid.rows)
      last.push({ sheet, need });
    else pages.push([{ sheet, need }]);
  }
  const [before, last] = pages.slice(-2);
  if (before !== undefined && last?.length === 1 && before.length > 2 && rowsOf(last, grid) < grid.rows)
    last.unshift(before.pop()!);
  return pages.map((page) => ({
    sheets: placed(filled(page, grid), grid),
    more: page.some(({ need }) => need === 'more'),
  }));
}

/** Rows of cells that sheets take together; too many where one needs the page for itself. */
function rowsOf(sheets: readonly Wanted[], { columns, rows }: Grid): number {
  const whole = sheets.filter(({ need }) => need === 'page' || need === 'more').length * rows;
  const across = sheets.filter(({ need }) => need === 'row').length;
  const cells = sheets.filter(({ need }) => need === 'cell').length;
  return whole + across + Math.ceil(cells / columns);
}

/** The same sheets, made larger until nothing of the page is left over. */
function filled(sheets: readonly Wanted[], grid: Grid): readonly Wanted[] {
  if (sheets.length === 1) return [{ ...sheets[0]!, need: 'page' }];
  const cells = sheets.filter(({ need }) => need === 'cell');
  const first = cells[0];
  if (first === undefined) return sheets;
  const alone = cells.length % grid.columns !== 0;
  if (!alone && rowsOf(sheets, grid) >= grid.rows) return sheets;
  const grown = sheets.map((each) => (each === first ? { ...each, need: 'row' as const } : each));
  return filled(grown, grid);
}

function placed(sheets: readonly Wanted[], { columns, rows }: Grid): readonly PlacedSheet[] {
  const cells = sheets.filter(({ need }) => need === 'cell');
  const others = sheets.filter(({ need }) => need !== 'cell');
  const rowsOfCells = Math.ceil(cells.length / columns);
  // Cells come first where the first sheet is one, so that sheets stay near their order.
  const cellsAt = sheets[0]?.need === 'cell' ? 0 : others.length;
  const othersAt = cellsAt === 0 ? rowsOfCells : 0;
  return sheets.map(({ sheet, need }) => {
    if (need !== 'cell') {
      const place = others.findIndex((each) => each.sheet === sheet);
      const down = need === 'row' ? 1 : rows;
      return { sheet, column: 0, row: othersAt + place, across: columns, down };
    }
    const place = cells.findIndex((each) => each.sheet === sheet);
    const row = cellsAt + Math.floor(place / columns);
    return { sheet, column: place % columns, row, across: 1, down: 1 };
  });
}
