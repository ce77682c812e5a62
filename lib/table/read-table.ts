import Papa from 'papaparse';
import { fail, ok, type Result } from '@/lib/result/result';

/** One line of a table, counted from 1, cut into cells. */
export type TableLine = { readonly line: number; readonly cells: readonly string[] };

/** Why a text is no table at all. */
export type TableProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'too-large'; readonly limit: number }
  | { readonly code: 'too-many-lines'; readonly limit: number }
  /** A quote was opened and never closed, so that where a line ends cannot be told. */
  | { readonly code: 'quotes-broken' };

export type TableLimits = {
  readonly mostCharacters: number;
  /** Below the head, where there is one. */
  readonly mostLines: number;
  /** What may stand between two cells, the likelier first. */
  readonly delimiters: readonly string[];
};

/** Text cut into cells line by line, blank lines too; null where a quote is opened and never closed. */
export function cutCells(text: string, delimiter: string): readonly (readonly string[])[] | null {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter });
  return errors.some(({ type }) => type === 'Quotes') ? null : data;
}

/** The lines of a table that hold anything, as they come out of a spreadsheet or a file. */
export function readTable(
  text: string,
  { mostCharacters, delimiters }: TableLimits,
): Result<readonly TableLine[], TableProblem> {
  if (text.length > mostCharacters) return fail({ code: 'too-large', limit: mostCharacters });
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: [...delimiters],
  });
  if (errors.some(({ type }) => type === 'Quotes')) return fail({ code: 'quotes-broken' });
  return ok(data.map((cells, i) => ({ line: i + 1, cells })));
}

/** The lines below the head, or why there are none or too many. */
export function linesBelow(
  lines: readonly TableLine[],
  { mostLines }: TableLimits,
): Result<readonly TableLine[], TableProblem> {
  if (lines.length === 0) return fail({ code: 'empty' });
  return lines.length > mostLines ? fail({ code: 'too-many-lines', limit: mostLines }) : ok(lines);
}
