/**
 * What a spreadsheet takes for the start of a formula: = + - @, tab, line ends and the null character, also in
 * their wide forms. Sources: OWASP, "CSV Injection"; OWASP ASVS 5.0, 1.2.10.
 */
const FORMULA_START = /^'*[=+\-@\t\r\n\0＝＋－＠]/;

/** The text with an apostrophe before it where a spreadsheet would run it; `fromCell` takes it off again. */
export function toCell(text: string): string {
  return FORMULA_START.test(text) ? `'${text}` : text;
}

/** The text as it was before `toCell`. */
export function fromCell(cell: string): string {
  return cell.startsWith("'") && FORMULA_START.test(cell.slice(1)) ? cell.slice(1) : cell;
}
