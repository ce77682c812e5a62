/** ISO 216 and ANSI/ASME Y14.1, upright [mm]. */
const SIZES = {
  a4: [210, 297],
  letter: [215.9, 279.4],
  a5: [148, 210],
  a6: [105, 148],
} as const;

export type PaperSize = keyof typeof SIZES;

/** How many sheets stand on one page, to be cut apart. */
export type SheetsUp = 1 | 2 | 4;

/** A page with a grid of equal cells, one for a sheet. */
export type SheetPaper = {
  readonly size: PaperSize;
  readonly lies: 'upright' | 'across';
  /** [mm] */
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
};

/**
 * The page on which so many sheets of one shape stand. Half a page of ISO 216 has the shape of the whole turned by a
 * quarter, so the page of two lies the other way than that of one or four.
 */
export function sheetPaper(size: PaperSize, up: SheetsUp, sheet: SheetPaper['lies']): SheetPaper {
  const [short, long] = SIZES[size];
  const other = sheet === 'upright' ? 'across' : 'upright';
  const lies = up === 2 ? other : sheet;
  const [width, height] = lies === 'upright' ? [short, long] : [long, short];
  return {
    size,
    lies,
    width,
    height,
    columns: up === 4 || (up === 2 && lies === 'across') ? 2 : 1,
    rows: up === 4 || (up === 2 && lies === 'upright') ? 2 : 1,
  };
}
