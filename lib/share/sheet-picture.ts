import type { SheetRow } from '@/lib/words/sheet-rows';

/** One text of a picture, where its line stands [px]. */
export type DrawnText = {
  readonly text: string;
  readonly x: number;
  /** Of the line that letters stand on. */
  readonly y: number;
  readonly size: number;
  readonly bold: boolean;
};

export type SheetPicture = {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly DrawnText[];
};

/** How wide a text is in a size [px]. */
export type MeasureText = (text: string, size: number, bold: boolean) => number;

/** As wide as the screen of a phone, which is where it is read. */
const WIDTH = 1080;
const MARGIN = 56;
const INNER = WIDTH - 2 * MARGIN;
const LINE = 1.3;

type Style = { readonly size: number; readonly bold: boolean; readonly above: number };

const STYLES: Readonly<Record<SheetRow['kind'], Style>> = {
  title: { size: 64, bold: true, above: 0 },
  lead: { size: 42, bold: true, above: 24 },
  strong: { size: 46, bold: true, above: 26 },
  text: { size: 34, bold: false, above: 4 },
  head: { size: 28, bold: true, above: 32 },
  cells: { size: 34, bold: false, above: 6 },
  small: { size: 26, bold: false, above: 18 },
};

/** Left edges of the five cells, as shares of the width; jets are the widest. */
const COLUMNS: readonly number[] = [0, 0.33, 0.47, 0.56, 0.8];
const CELL_GAP = 12;

/** Where every word of a sheet stands on a picture: long rows go on over as many lines as they need, nothing is cut. */
export function sheetPicture(rows: readonly SheetRow[], measure: MeasureText): SheetPicture {
  const texts: DrawnText[] = [];
  let y = MARGIN;
  for (const row of rows) {
    const { size, bold, above } = STYLES[row.kind];
    const columns = 'cells' in row ? row.cells : [row.text];
    const edges = columns.length === 1 ? [0, 1] : [...COLUMNS, 1];
    const wrapped = columns.map((text, i) => {
      const room = (edges[i + 1]! - edges[i]!) * INNER - (columns.length === 1 ? 0 : CELL_GAP);
      return wrap(text, room, (part) => measure(part, size, bold));
    });
    y += above;
    for (const [i, lines] of wrapped.entries())
      for (const [n, text] of lines.entries())
        texts.push({ text, x: MARGIN + edges[i]! * INNER, y: y + size + n * size * LINE, size, bold });
    y += Math.max(...wrapped.map(({ length }) => length)) * size * LINE;
  }
  return { width: WIDTH, height: Math.ceil(y + MARGIN), texts };
}

/** Words over lines; a word wider than the room is broken inside. */
function wrap(text: string, room: number, widthOf: (text: string) => number): readonly string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ').flatMap((each) => broken(each, room, widthOf))) {
    const line = lines[lines.length - 1]!;
    const longer = line === '' ? word : `${line} ${word}`;
    if (widthOf(longer) <= room || line === '') lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function broken(word: string, room: number, widthOf: (text: string) => number): readonly string[] {
  if (widthOf(word) <= room) return [word];
  const pieces: string[] = [''];
  for (const letter of word) {
    const piece = pieces[pieces.length - 1]!;
    if (piece !== '' && widthOf(piece + letter) > room) pieces.push(letter);
    else pieces[pieces.length - 1] = piece + letter;
  }
  return pieces;
}
