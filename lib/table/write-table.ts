import { unparse } from 'papaparse';

type Cell = string | number;

/** A table as text with a head (RFC 4180). Texts must have been made safe by `toCell` before. */
export function writeTable(heads: readonly string[], lines: readonly (readonly Cell[])[]): string {
  return `${unparse({ fields: [...heads], data: lines.map((cells) => [...cells]) }, { newline: '\r\n' })}\r\n`;
}
