/**
 * What a spreadsheet takes for the start of a formula: = + - @, tab and line ends, also in their wide forms. Source:
 * OWASP, "CSV Injection".
 */
const FORMULA_START = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** The text with an apostrophe before it where a spreadsheet would run it; `fromCell` takes it off again. */
export function toCell(text: string): string {
  return FORMULA_START.test(text) ? `'${text}` : text;
}

/** The text as it was before `toCell`. */
export function fromCell(cell: string): string {
  return cell.startsWith("'") && FORMULA_START.test(cell.slice(1)) ? cell.slice(1) : cell;
}
