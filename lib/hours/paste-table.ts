import { fail, ok, type Result } from '@/lib/result/result';
import { cutCells, type TableLine } from '@/lib/table/read-table';
import { PRESSURE_UNIT_NAMES } from '@/lib/units/entry';
import { takeApart } from '@/lib/units/entry-number';
import type { PasteOptions, PasteProblem, PasteQuestion, Separator } from './pasted';

export type PastedTable = {
  readonly lines: readonly TableLine[];
  readonly separator: Separator;
  readonly decimal: 'point' | 'comma' | null;
  readonly turned: boolean;
  readonly question: PasteQuestion | null;
};

/** A night has 24 lines; a month of hours and a stray title fit. */
const MOST_LINES = 1000;
/** A week of hours in one line fits, and every table a service gives. */
const MOST_COLUMNS = 200;

const DELIMITER = { tab: '\t', semicolon: ';', comma: ',' } as const;

/** A sign, a blank cell, what spreadsheets and services write for "nothing here". */
const MISSING = /^(?:-+|–|—|\.+|n\/?a|nan|null|none|m|missing|#n\/a|\?)?$/i;
export const isMissing = (cell: string): boolean => MISSING.test(cell.trim());

const CLOCK_LIKE = /^\s*"?\d{1,2}(?:[:h]\d{2}|\s*[ap]\.?m)/i;
const looksLikeNumber = (cell: string): boolean => takeApart(cell).ok;

const PRESSURES = PRESSURE_UNIT_NAMES.filter((name) => /^[a-z]+$/.test(name))
  .map((name) => `${name}\\b`)
  .join('|');
const BLANK_BEFORE_UNIT = new RegExp(`(\\d)\\s+(?=(?:°|º)?\\s?[cf]\\b|%|${PRESSURES})`, 'gi');
const BLANK_IN_TITLE = new RegExp(`([a-z])\\s+(?=(?:°|º)[cf]\\b|[([]|%|${PRESSURES})`, 'gi');

/** Blanks within one value (6 PM, -12 °C) are closed up, so that what is left separates cells. */
function blankCells(line: string): string[] {
  return line
    .replace(/(\d)\s+(?=[ap]\.?m\b)/gi, '$1')
    .replace(BLANK_BEFORE_UNIT, '$1')
    .replace(/(?:°|º)\s+(?=[cf]\b)/gi, '°')
    .replace(BLANK_IN_TITLE, '$1')
    .trim()
    .split(/\s+/);
}

function separatorOf(lines: readonly string[]): Separator {
  const filled = lines.filter((line) => line.trim() !== '');
  const having = (mark: string): number => filled.filter((line) => line.includes(mark)).length;
  if (having('\t') > 0) return 'tab';
  if (having(';') * 2 >= filled.length) return 'semicolon';
  // A comma with a blank, a letter or a sign beside it, or behind a clock time, separates; "-12,5" does not.
  const separates = (line: string): boolean =>
    /,(?!\d)|(?<!\d),|"/.test(line) || (CLOCK_LIKE.test(line) && /^[^\s,]+(?:\s*[ap]\.?m\.?)?,/i.test(line));
  return filled.some((line) => line.includes(',') && separates(line)) ? 'comma' : 'space';
}

/** Longer cells hold no number; this keeps the search for decimals short on hostile text. */
const LONGEST_NUMBER = 24;

/** Puts "-12" and "5" back together where the person said that commas are decimal marks. */
function joinDecimals(cells: readonly string[]): readonly string[] {
  const joined: string[] = [];
  for (let i = 0; i < cells.length; i++) {
    const [cell, next] = [cells[i] ?? '', cells[i + 1] ?? ''];
    const short = cell.length <= LONGEST_NUMBER && next.length <= LONGEST_NUMBER;
    if (short && /^\s*[-+−–]?\d+$/.test(cell) && /^\d+(?!\d*[:/h])\D*$/.test(next)) {
      joined.push(`${cell},${next}`);
      i++;
    } else joined.push(cell);
  }
  return joined;
}

/** A quote that is never closed would swallow the rest of the text: then quotes are only signs. */
function cutAt(delimiter: string, text: string): readonly (readonly string[])[] {
  const bare = (cell: string): string => cell.replace(/^\s*"|"\s*$/g, '');
  return cutCells(text, delimiter) ?? text.split('\n').map((line) => line.split(delimiter).map(bare));
}

/** Lines and cells as they stand, or why there are too many. */
function cut(
  text: string,
  separator: Separator,
  commaIs: PasteOptions['commaIs'],
): Result<readonly TableLine[], PasteProblem> {
  const rows = separator === 'space' ? text.split('\n').map(blankCells) : cutAt(DELIMITER[separator], text);
  if (rows.length > MOST_LINES) return fail({ code: 'too-many-lines', limit: MOST_LINES });
  if (rows.some((cells) => cells.length > MOST_COLUMNS))
    return fail({ code: 'too-many-columns', limit: MOST_COLUMNS });
  const joined = separator === 'comma' && commaIs === 'decimal' ? rows.map(joinDecimals) : rows;
  return ok(joined.map((cells, i) => ({ line: i + 1, cells: cells.map((cell) => cell.trim()) })));
}

/** True where the commas between digits can be read both ways and nothing in the text decides. */
function commaIsOpen(lines: readonly TableLine[], separator: Separator): TableLine | null {
  if (separator === 'space') {
    // "-12,80" alone on every line: a number, or a temperature and a humidity. One digit behind the comma is a number.
    const pairs = lines.filter(
      ({ cells }) => cells.length === 1 && /^[-+−–]?\d+,\d{2,}$/.test(cells[0] ?? ''),
    );
    const filled = lines.filter(({ cells }) => cells.some((cell) => /\d/.test(cell)));
    return pairs.length === filled.length ? (pairs[0] ?? null) : null;
  }
  if (separator !== 'comma' || lines.some(({ cells }) => cells.some((cell) => /\d\.\d/.test(cell))))
    return null;
  const header = lines.find(({ cells }) => cells.some((cell) => cell !== ''));
  const titles =
    header !== undefined && !header.cells.some((cell) => /\d/.test(cell)) ? header.cells.length : null;
  const open = lines.find(
    ({ cells }) =>
      cells.some((cell, i) => /^[-+−–]?\d+$/.test(cell) && /^\d+\D*$/.test(cells[i + 1] ?? '')) &&
      (titles === null || cells.length > titles),
  );
  return open ?? null;
}

/** A table on its side is set upright: one line of times above one of temperatures, or one line of numbers. */
function upright(lines: readonly TableLine[]): {
  readonly lines: readonly TableLine[];
  readonly turned: boolean;
} {
  const filled = lines.filter(({ cells }) => cells.some((cell) => cell !== ''));
  const width = Math.max(0, ...filled.map(({ cells }) => cells.length));
  const first = filled[0]?.cells ?? [];
  const clocks = first.filter((cell) => CLOCK_LIKE.test(cell)).length;
  const numbers = first.filter(looksLikeNumber).length;
  const lies = width > filled.length && width >= 4 && (clocks >= 3 || (filled.length === 1 && numbers >= 3));
  if (!lies) return { lines, turned: false };
  return {
    turned: true,
    lines: Array.from({ length: width }, (_, i) => ({
      line: i + 1,
      cells: filled.map(({ cells }) => cells[i] ?? ''),
    })),
  };
}

function decimalIn(lines: readonly TableLine[]): PastedTable['decimal'] {
  const has = (mark: RegExp): boolean => lines.some(({ cells }) => cells.some((cell) => mark.test(cell)));
  if (has(/\d,\d/)) return 'comma';
  return has(/\d\.\d/) ? 'point' : null;
}

/** Cuts pasted text into lines and cells. Blank lines at the ends go; those between stay, they may count as hours. */
export function cutTable(text: string, commaIs: PasteOptions['commaIs']): Result<PastedTable, PasteProblem> {
  const plain = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .trimEnd();
  const said = commaIs === 'separator' && plain.includes(',') && !/[\t;]/.test(plain);
  const separator = said ? 'comma' : separatorOf(plain.split('\n'));
  const all = cut(plain, separator, commaIs);
  if (!all.ok) return all;
  const start = all.value.findIndex(({ cells }) => cells.some((cell) => cell !== ''));
  const { lines, turned } = upright(all.value.slice(start));
  const open = commaIs === undefined ? commaIsOpen(lines, separator) : null;
  return ok({
    lines,
    separator,
    decimal: decimalIn(lines),
    turned,
    question: open === null ? null : { code: 'comma-could-be-decimal', text: open.cells.join(',') },
  });
}
