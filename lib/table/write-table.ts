import { unparse } from 'papaparse';

type Cell = string | number;

/**
 * A table as text with a head (RFC 4180). Every text is quoted, so that a spreadsheet that cuts cells at another mark
 * than the comma, as those of half of Europe do at `;`, makes no formula of what stands behind it. Numbers stand bare.
 * Texts must have been made safe by `toCell` before.
 */
export function writeTable(heads: readonly string[], lines: readonly (readonly Cell[])[]): string {
  const table = { fields: [...heads], data: lines.map((cells) => [...cells]) };
  const quotes = (value: Cell): boolean => typeof value === 'string' && value !== '';
  return `${unparse(table, { newline: '\r\n', quotes })}\r\n`;
}
