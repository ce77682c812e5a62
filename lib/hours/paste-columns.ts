import type { PressureKind } from '@/lib/air/air';
import type { TableLine } from '@/lib/table/read-table';
import { PRESSURE_UNIT_NAMES } from '@/lib/units/entry';
import { takeApart } from '@/lib/units/entry-number';
import { readTitle, readUnitCell } from './paste-header';
import { readMoment } from './paste-moment';
import { isMissing, type PastedTable } from './paste-table';
import type { ColumnMeaning, PasteQuestion } from './pasted';

export type PastedColumn = {
  readonly index: number;
  readonly header: string | null;
  readonly meaning: ColumnMeaning;
  /** From the header; null where it says none. */
  readonly unit: string | null;
};

export type PastedColumns = {
  readonly columns: readonly PastedColumn[];
  readonly pressureKind: PressureKind | null;
  /** Index of the header line; null where there is none. */
  readonly headerAt: number | null;
  /** Index of the first line of data. */
  readonly dataFrom: number;
  readonly question: PasteQuestion | null;
};

/** A header stands within the first lines, below titles and notes at most. */
const HEADER_WITHIN = 6;

/** Of the first lines without a number or a time, the one with the most known titles. */
function headerRow(lines: readonly TableLine[]): number | null {
  const named = lines
    .slice(0, HEADER_WITHIN)
    .map(({ cells }) =>
      cells.some((cell) => takeApart(cell).ok || readMoment(cell, false) !== null)
        ? 0
        : cells.filter((cell) => readTitle(cell) !== null).length,
    );
  const most = Math.max(0, ...named);
  return most === 0 ? null : named.indexOf(most);
}

/** Titles of several words, cut apart at blanks, outnumber the cells below them: they stand over the wrong columns. */
function titlesFit({ lines, separator }: PastedTable, header: number, dataFrom: number): boolean {
  const width = Math.max(0, ...lines.slice(dataFrom).map(({ cells }) => cells.length));
  return separator !== 'space' || (lines[header]?.cells.length ?? 0) <= width;
}

/** A line of units right below the header: no digit in it, and a unit at least. */
function unitRow(line: TableLine | undefined): readonly (string | null)[] | null {
  if (line === undefined || line.cells.some((cell) => /\d/.test(cell))) return null;
  const units = line.cells.map(readUnitCell);
  return units.every((unit) => unit === null) ? null : units;
}

/** What the cells of a column look like where no header names it. */
function meaningOfCells(cells: readonly string[]): ColumnMeaning | 'bare' | 'text' {
  const filled = cells.filter((cell) => !isMissing(cell));
  const all = (test: (cell: string) => boolean): boolean => filled.length > 0 && filled.every(test);
  const unitIn = (units: readonly string[]) => (cell: string) => {
    const entry = takeApart(cell);
    return entry.ok && units.includes(entry.value.unit);
  };
  const some = (test: (cell: string) => boolean): boolean => filled.some(test);
  if (all((cell) => readMoment(cell, false)?.clock === null && readMoment(cell, false)?.instant === null))
    return 'date';
  // One slip in a column of times makes it no other column.
  if (filled.filter((cell) => readMoment(cell, false) !== null).length * 2 > filled.length) return 'time';
  if (some(unitIn(['%']))) return 'humidity';
  if (some(unitIn(PRESSURE_UNIT_NAMES))) return 'pressure';
  if (some(unitIn(['c', 'f', 'degc', 'degf', 'celsius', 'fahrenheit']))) return 'temperature';
  return some((cell) => takeApart(cell).ok) ? 'bare' : 'text';
}

function fromCells(
  lines: readonly TableLine[],
  width: number,
): { readonly meanings: readonly ColumnMeaning[]; readonly open: readonly number[] } {
  const seen = Array.from({ length: width }, (_, i) =>
    meaningOfCells(lines.map(({ cells }) => cells[i] ?? '')),
  );
  const indexes = seen.map((_, i) => i);
  const bare = indexes.filter((i) => seen[i] === 'bare');
  const signed = indexes.filter((i) => seen[i] === 'temperature');
  const single = signed.length === 0 && bare.length === 1 ? bare[0] : undefined;
  const open = [...(signed.length > 1 ? signed : []), ...(single === undefined ? bare : [])];
  const meanings = seen.map((meaning, i): ColumnMeaning => {
    if (i === single) return 'temperature';
    return meaning === 'bare' || meaning === 'text' ? 'ignored' : meaning;
  });
  return { meanings, open };
}

/** Two columns of one meaning that must be told apart by a person. */
function alike(columns: readonly PastedColumn[]): readonly number[] {
  return columns
    .filter(
      (a) => a.meaning !== 'ignored' && columns.some((b) => b.index !== a.index && b.meaning === a.meaning),
    )
    .map(({ index }) => index);
}

function columnsOf(
  table: PastedTable,
  { headerAt, dataFrom }: Pick<PastedColumns, 'headerAt' | 'dataFrom'>,
  answers: readonly (ColumnMeaning | undefined)[] | undefined,
) {
  const { lines } = table;
  const width = Math.max(0, ...lines.map(({ cells }) => cells.length));
  const named = headerAt !== null && titlesFit(table, headerAt, dataFrom);
  const titles = named ? (lines[headerAt]?.cells ?? []) : [];
  const units = named ? unitRow(lines[headerAt + 1]) : null;
  const guessed = named ? null : fromCells(lines.slice(dataFrom), width);
  const columns = Array.from({ length: width }, (_, index): PastedColumn => {
    const title = readTitle(titles[index] ?? '');
    return {
      index,
      header: titles[index] ?? null,
      meaning: answers?.[index] ?? title?.meaning ?? guessed?.meanings[index] ?? 'ignored',
      unit: units?.[index] ?? title?.unit ?? null,
    };
  });
  return {
    columns,
    open: answers === undefined ? [...new Set([...(guessed?.open ?? []), ...alike(columns)])] : [],
  };
}

/** What each column holds, from the header or from the look of its cells, or which columns to ask about. */
export function findColumns(
  table: PastedTable,
  answers: readonly (ColumnMeaning | undefined)[] | undefined,
): PastedColumns {
  const headerAt = headerRow(table.lines);
  const dataFrom = headerAt === null ? 0 : headerAt + (unitRow(table.lines[headerAt + 1]) === null ? 1 : 2);
  const { columns, open } = columnsOf(table, { headerAt, dataFrom }, answers);
  const sample = (index: number): string =>
    table.lines
      .slice(dataFrom)
      .map(({ cells }) => cells[index] ?? '')
      .find((cell) => !isMissing(cell)) ?? '';
  const pressure = columns.find(({ meaning }) => meaning === 'pressure');
  return {
    columns,
    headerAt,
    dataFrom,
    pressureKind: pressure === undefined ? null : (readTitle(pressure.header ?? '')?.pressureKind ?? null),
    question: open.length === 0 ? null : { code: 'which-column', columns: open, sample: open.map(sample) },
  };
}
