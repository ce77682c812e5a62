/** Rows of a long table that stay on one page: where a table goes on, no row stands alone at its end or its head. */
export const ROWS_TOGETHER = 4;

/** Rows in groups of at most so many, as even as they can be: none is alone unless there is but one. */
export function inGroups<Row>(rows: readonly Row[], most: number): readonly (readonly Row[])[] {
  const groups = Math.ceil(rows.length / most);
  return Array.from({ length: groups }, (_, i) =>
    rows.slice(Math.ceil((i * rows.length) / groups), Math.ceil(((i + 1) * rows.length) / groups)),
  );
}
