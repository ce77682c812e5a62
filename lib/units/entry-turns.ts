import { fail, ok, type Result } from '@/lib/result/result';
import { readNumber } from './entry';
import type { EntryProblem } from './entry-number';

/** What may follow a number of turns. */
const WORDS = /\s*(?:turns?)?\s*(?:out)?\s*$/i;
const WHOLE_AND_PARTS = /^(?:(\d{1,2})(?:\s*[-+&]\s*|\s+(?:and\s+)?))?(\d{1,2})\s*\/\s*(\d{1,2})$/;
/** ¼ ½ ¾ ⅛ and their like: compatibility letters that stand for two numbers with U+2044 between. */
const ONE_LETTER = /\d*\s*[\u00bc-\u00be\u2150-\u215e\u2189]/g;

/** "2¼" -> "2 1/4". Has to come before any other plain writing, which makes 21⁄4 of it. */
function spellOut(text: string): string {
  const spelled = text.replace(
    ONE_LETTER,
    (found) => `${found.slice(0, -1)} ${found.slice(-1).normalize('NFKC')}`,
  );
  return spelled
    .normalize('NFKC')
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .trim();
}

/**
 * Turns of a screw as riders write them: "1.25", "1,25", "3/4", "2 1/4", "2-1/4", "2¼", "1½ turns out". The parts of a
 * mixed number are less than one turn, so "1 5/4" is refused as a slip.
 */
export function readTurns(text: string): Result<number, EntryProblem> {
  const spelled = spellOut(text.slice(0, 64)).replace(WORDS, '');
  const parts = WHOLE_AND_PARTS.exec(spelled);
  if (parts === null) {
    const number = readNumber(spelled);
    return number.ok || number.reason.code === 'empty' ? number : fail({ ...number.reason, text });
  }
  const [, whole, above, below] = parts;
  const share = Number(above) / Number(below);
  if (!Number.isFinite(share) || (whole !== undefined && share >= 1))
    return fail({ code: 'not-a-number', text });
  return ok(Number(whole ?? 0) + share);
}
