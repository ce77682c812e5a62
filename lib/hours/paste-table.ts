import Papa from 'papaparse';
import { takeApart } from '@/lib/units/entry-number';
import type { PasteOptions, PasteQuestion, Separator } from './pasted';

/** One line of the pasted text, cut into cells. */
export type PastedLine = { readonly line: number; readonly cells: readonly string[] };

export type PastedTable = {
  readonly lines: readonly PastedLine[];
  readonly separator: Separator;
  readonly decimal: 'point' | 'comma' | null;
  readonly turned: boolean;
  readonly question: PasteQuestion | null;
};

const DELIMITER = { tab: '\t', semicolon: ';', comma: ',' } as const;

/** A sign, a blank cell, what spreadsheets and services write for "nothing here". */
const MISSING = /^(?:-+|–|—|\.+|n\/?a|nan|null|none|m|missing|#n\/a|\?)?$/i;
export const isMissing = (cell: string): boolean => MISSING.test(cell.trim());

const CLOCK_LIKE = /^\s*"?\d{1,2}(?:[:h]\d{2}|\s*[ap]\.?m)/i;
export const looksLikeNumber = (cell: string): boolean => takeApart(cell).ok;

/** Blanks within one value (6 PM, -12 °C) are closed up, so that what is left separates cells. */
function blankCells(line: string): string[] {
  return line
    .replace(/(\d)\s+(?=[ap]\.?m\b)/gi, '$1')
    .replace(/(\d)\s+(?=(?:°|º)?\s?[cf]\b|%|hpa\b|mbar\b|mb\b|kpa\b|inhg\b|mmhg\b)/gi, '$1')
    .replace(/(?:°|º)\s+(?=[cf]\b)/gi, '°')
    .replace(/([a-z])\s+(?=(?:°|º)[cf]\b|[([]|%|hpa\b|mbar\b|kpa\b|inhg\b)/gi, '$1')
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

/** Puts "-12" and "5" back together where the person said that commas are decimal marks. */
function joinDecimals(cells: readonly string[]): string[] {
  const joined: string[] = [];
  for (let i = 0; i < cells.length; i++) {
    const [cell, next] = [cells[i] ?? '', cells[i + 1] ?? ''];
    if (/^\s*[-+−–]?\d+$/.test(cell) && /^\d+(?!\d*[:/h])\D*$/.test(next)) {
      joined.push(`${cell},${next}`);
      i++;
    } else joined.push(cell);
  }
  return joined;
}

function cut(text: string, separator: Separator, commaIs: PasteOptions['commaIs']): PastedLine[] {
  const rows =
    separator === 'space'
      ? text.split('\n').map(blankCells)
      : Papa.parse<string[]>(text, { delimiter: DELIMITER[separator] }).data;
  return rows.map((cells, i) => ({
    line: i + 1,
    cells: (separator === 'comma' && commaIs === 'decimal' ? joinDecimals(cells) : cells).map((cell) =>
      cell.trim(),
    ),
  }));
}

/** True where the commas between digits can be read both ways and nothing in the text decides. */
function commaIsOpen(lines: readonly PastedLine[], separator: Separator): PastedLine | null {
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
function upright(lines: readonly PastedLine[]): {
  readonly lines: readonly PastedLine[];
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

/** Cuts pasted text into lines and cells. Blank lines at the ends go; those between stay, they may count as hours. */
export function cutTable(text: string, commaIs: PasteOptions['commaIs']): PastedTable {
  const plain = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .replace(/\s+$/, '');
  const separator =
    commaIs === 'separator' && plain.includes(',') && !/[\t;]/.test(plain)
      ? 'comma'
      : separatorOf(plain.split('\n'));
  const all = cut(plain, separator, commaIs);
  const start = all.findIndex(({ cells }) => cells.some((cell) => cell !== ''));
  const { lines, turned } = upright(all.slice(start));
  const open = commaIs === undefined ? commaIsOpen(lines, separator) : null;
  const cells = lines.flatMap((line) => line.cells);
  const decimal = cells.some((cell) => /\d,\d/.test(cell))
    ? 'comma'
    : cells.some((cell) => /\d\.\d/.test(cell))
      ? 'point'
      : null;
  return {
    lines,
    separator,
    decimal,
    turned,
    question: open === null ? null : { code: 'comma-could-be-decimal', text: open.cells.join(',') },
  };
}
