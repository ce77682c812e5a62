/** A straight stroke within a row: x from 0 (left) to 1, y from 0 (top) to 1. */
export type Segment = {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
};

/** Where a line comes into a row and goes out of it; 'between': straight through, from the row above to the one below. */
export type Through = { readonly in: number | null; readonly out: number | null } | 'between';

/**
 * The strokes of one line, row by row. Rows meet halfway between what stands in them, so that the line is whole whatever
 * height each row has; where a row knows no place, the line ends in the middle of the one before it.
 */
export function traced(rows: readonly Through[]): readonly (readonly Segment[])[] {
  const edges = rows.slice(1).map((_, i) => edgeAfter(rows, i));
  return rows.map((row, i) => {
    const [above, below] = [edges[i - 1] ?? null, edges[i] ?? null];
    if (row === 'between')
      return above === null || below === null ? [] : [{ x1: above, y1: 0, x2: below, y2: 1 }];
    return [
      ...(above === null || row.in === null ? [] : [{ x1: above, y1: 0, x2: row.in, y2: 0.5 }]),
      ...(row.in === null || row.out === null || row.in === row.out
        ? []
        : [{ x1: row.in, y1: 0.5, x2: row.out, y2: 0.5 }]),
      ...(below === null || row.out === null ? [] : [{ x1: row.out, y1: 0.5, x2: below, y2: 1 }]),
    ];
  });
}

/** Where the line passes from row i to the next, rows in between shared out evenly; null where an end of it is missing. */
function edgeAfter(rows: readonly Through[], i: number): number | null {
  const upper = rows.findLastIndex((row, at) => at <= i && row !== 'between');
  const lower = rows.findIndex((row, at) => at > i && row !== 'between');
  const [above, below] = [rows[upper], rows[lower]];
  if (above === undefined || below === undefined || above === 'between' || below === 'between') return null;
  if (above.out === null || below.in === null) return null;
  // Half a row from the middle of the upper one, then whole rows.
  const share = (i - upper + 0.5) / (lower - upper);
  return above.out + (below.in - above.out) * share;
}
