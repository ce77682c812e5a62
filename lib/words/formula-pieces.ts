const OPEN = '([';
const CLOSE = ')]';

/** A text cut at the spaces outside of its brackets: "p / (Z R T)" is "p", "/" and "(Z R T)". */
export function formulaPieces(text: string): readonly string[] {
  const pieces: string[] = [''];
  let depth = 0;
  for (const sign of text) {
    if (OPEN.includes(sign)) depth += 1;
    if (CLOSE.includes(sign)) depth -= 1;
    if (sign === ' ' && depth <= 0) pieces.push('');
    else pieces[pieces.length - 1] += sign;
  }
  return pieces;
}

/** What stands in the outermost brackets of a piece, and what on either side, its brackets with it; null without any. */
export function bracketed(
  piece: string,
): { readonly before: string; readonly inside: string; readonly after: string } | null {
  const signs = [...piece];
  const from = signs.findIndex((sign) => OPEN.includes(sign));
  let depth = 0;
  const to = signs.findIndex((sign, place) => {
    if (place < from) return false;
    if (OPEN.includes(sign)) depth += 1;
    if (CLOSE.includes(sign)) depth -= 1;
    return depth === 0;
  });
  if (from < 0 || to < 0) return null;
  const part = (start: number, end?: number): string => signs.slice(start, end).join('');
  return { before: part(0, from + 1), inside: part(from + 1, to), after: part(to) };
}

/** Symbols, numbers and short names as in "1 − k drift²": words in brackets are read on from line to line. */
export const isFormula = (text: string): boolean => !/\p{L}{6}/u.test(text);
