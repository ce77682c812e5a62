import { fail, ok, type Result } from '@/lib/result/result';
import { normaliseBox } from './box';
import type { Box, BoxEntry } from './machine';

export type BoxTextProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'not-a-jet'; readonly text: string }
  /** More than 99 of one size: size and count were most likely swapped. */
  | {
      readonly code: 'count-too-large';
      readonly text: string;
      readonly size: number;
      readonly count: number;
    };

const MOST_OF_A_SIZE = 99;
/** 400x3, 400 × 3, 400*3, 400 (3), 162.5x2. */
const ENTRY = /^(\d+(?:\.\d+)?)(?:\s*[x×*]\s*(\d+)|\s*\(\s*(\d+)\s*\))?$/i;

/** What stands between two jets once counts have been pulled to their sizes. */
const SEPARATORS = /[/,;\s]+/;

/**
 * A box as a person types it: "400x3 410x3 420". A size alone is one piece; a size named twice adds up. A comma with
 * one digit behind it is a decimal comma ("162,5"), any other comma parts two jets.
 */
export function readBoxText(text: string): Result<Box, BoxTextProblem> {
  const entries = readEntries(text);
  return entries.ok ? ok(normaliseBox(entries.value)) : entries;
}

/** Jets of which the order counts: "410/400/410" from the first carburettor to the last, "410x3", "35 37,5 40". */
export function readSizes(text: string): Result<readonly number[], BoxTextProblem> {
  const entries = readEntries(text);
  return entries.ok
    ? ok(entries.value.flatMap(({ size, count }) => Array<number>(count).fill(size)))
    : entries;
}

function readEntries(text: string): Result<readonly BoxEntry[], BoxTextProblem> {
  const words = text
    // First, so that no later pattern can search long blanks again and again.
    .replace(/\s+/g, ' ')
    .replace(/(\d),(\d)(?!\d)/g, '$1.$2')
    .replace(/ ?([x×*]) ?(?=\d)/gi, '$1')
    .replace(/ ?\( ?(\d+) ?\)/g, 'x$1')
    .split(SEPARATORS)
    .filter((word) => word !== '');
  if (words.length === 0) return fail({ code: 'empty' });
  const entries: BoxEntry[] = [];
  for (const word of words) {
    const entry = readEntry(word);
    if (!entry.ok) return entry;
    entries.push(entry.value);
  }
  return ok(entries);
}

function readEntry(word: string): Result<BoxEntry, BoxTextProblem> {
  const match = ENTRY.exec(word);
  if (match === null) return fail({ code: 'not-a-jet', text: word });
  const size = Number(match[1]);
  const count = Number(match[2] ?? match[3] ?? 1);
  if (size === 0 || count === 0) return fail({ code: 'not-a-jet', text: word });
  if (count > MOST_OF_A_SIZE) return fail({ code: 'count-too-large', text: word, size, count });
  return ok({ size, count });
}

export function boxText(box: Box): string {
  return box.map(({ size, count }) => (count === 1 ? String(size) : `${size}x${count}`)).join(' ');
}
