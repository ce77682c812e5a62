import { fail, ok, type Result } from '@/lib/result/result';
import { fromCell } from './cell';

/** Why the heads of a table do not say where everything stands. */
export type ColumnsProblem<C extends string> =
  | { readonly code: 'columns-missing'; readonly columns: readonly C[] }
  | { readonly code: 'column-twice'; readonly column: C };

export type TableColumns<C extends string> = {
  /** Where each column stands. */
  readonly places: ReadonlyMap<C, number>;
  /** Heads nobody here knows; those columns are left aside. */
  readonly ignored: readonly string[];
  /** Cells beyond have no head. */
  readonly width: number;
};

type KnownColumns<C extends string> = {
  readonly needed: readonly C[];
  /** The column a head names; null where it is none that is known. */
  readonly columnOf: (head: string) => C | null;
};

/** Longer than any head; keeps a pasted novel from being searched. */
const LONGEST_HEAD = 80;

/** The first line as heads. */
export function headsOf(cells: readonly string[]): readonly string[] {
  return cells.map((cell) => fromCell(cell).trim().slice(0, LONGEST_HEAD));
}

/** Finds the columns by the heads above them. */
export function findHeads<C extends string>(
  heads: readonly string[],
  { needed, columnOf }: KnownColumns<C>,
): Result<TableColumns<C>, ColumnsProblem<C>> {
  const places = new Map<C, number>();
  const ignored: string[] = [];
  for (const [index, head] of heads.entries()) {
    const column = columnOf(head);
    if (column === null) {
      if (head !== '') ignored.push(head);
      continue;
    }
    if (places.has(column)) return fail({ code: 'column-twice', column });
    places.set(column, index);
  }
  const columns = needed.filter((column) => !places.has(column));
  return columns.length > 0
    ? fail({ code: 'columns-missing', columns })
    : ok({ places, ignored, width: heads.length });
}

/** What stands in a column of a line, as it was before it was made safe for spreadsheets; '' where nothing does. */
export function cellOf<C extends string>(
  cells: readonly string[],
  { places }: Pick<TableColumns<C>, 'places'>,
  column: C,
): string {
  return fromCell(cells[places.get(column) ?? -1] ?? '');
}

/** Something stands in a cell that no head is above. */
export function hasMoreCells(
  cells: readonly string[],
  { width }: Pick<TableColumns<string>, 'width'>,
): boolean {
  return cells.slice(width).some((cell) => cell.trim() !== '');
}
