import { fail, ok, type Result } from '@/lib/result/result';

/** Why a typed text is not a quantity. Sentences for these live in lib/words. */
export type EntryProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'not-a-number'; readonly text: string }
  /** A number no computer can hold, such as 1e309. */
  | { readonly code: 'too-large'; readonly text: string }
  /** "1,600" where both 1.6 and 1600 make sense. */
  | {
      readonly code: 'ambiguous-mark';
      readonly text: string;
      readonly decimal: number;
      readonly thousands: number;
    }
  | { readonly code: 'unknown-unit'; readonly unit: string };

/** What was typed: a number, perhaps readable in two ways, and whatever stood behind it. */
export type Entry = {
  readonly text: string;
  /** The last mark taken as a decimal one, or null where it cannot be. */
  readonly asDecimal: number | null;
  /** Every mark taken as a thousands one, or null where the groups do not fit. */
  readonly asThousands: number | null;
  /** Lower case, no spaces, no degree sign; empty where none was typed. */
  readonly unit: string;
};

/** Longer than any honest entry; keeps a pasted novel from being searched. */
const LONGEST_ENTRY = 64;

const SIGN = '[+-]';
const ENTRY = new RegExp(
  `^(${SIGN})? ?(\\d(?:[\\d.,' ]*[\\d.,])?|[.,]\\d+)(e[+-]?\\d+)? ?(${SIGN})? ?([^\\d+-]*)$`,
  'i',
);
const GROUPED = /^[1-9]\d{0,2}(?:([.,' ])\d{3})(?:\1\d{3})*$/;

/**
 * Phones, spreadsheets and web pages write the same minus, space and degree sign in many ways: hyphens and dashes
 * become "-", every space becomes " ", full-width and combined signs become plain ones.
 */
function plainText(text: string): string {
  return text
    .replace(/[\u00ba\u02da\u2070]/g, '°')
    .normalize('NFKC')
    .replace(/[\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/g, '-')
    .replace(/[\u2018\u2019\u02bc\u2032]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/\s+/g, ' ')
    .trim();
}

/** "1.013,25" -> 1013.25; "12,5" -> 12.5; null where the marks before the last are no thousands marks. */
function decimalReading(digits: string): number | null {
  const at = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
  if (at < 0) return /^\d+$/.test(digits) ? Number(digits) : null;
  const whole = digits.slice(0, at);
  const decimals = digits.slice(at + 1);
  if (!/^\d*$/.test(decimals)) return null;
  if (whole === '' || /^\d+$/.test(whole)) return Number(`${whole || '0'}.${decimals || '0'}`);
  if (!GROUPED.test(whole) || whole.includes(digits.charAt(at))) return null;
  return Number(`${whole.replace(/\D/g, '')}.${decimals || '0'}`);
}

/** "1,600" and "1 600" -> 1600; null where the groups are not of three. */
function thousandsReading(digits: string): number | null {
  return GROUPED.test(digits) ? Number(digits.replace(/\D/g, '')) : null;
}

/** Takes a typed text apart into sign, number and unit. */
export function takeApart(text: string): Result<Entry, EntryProblem> {
  const plain = plainText(text.slice(0, LONGEST_ENTRY + 1));
  if (plain === '') return fail({ code: 'empty' });
  const parts = text.length > LONGEST_ENTRY ? null : ENTRY.exec(plain);
  if (parts === null) return fail({ code: 'not-a-number', text });
  const [, before, digits = '', exponent = '', behind, unit = ''] = parts;
  const marked = digits.trim();
  const decimal = decimalReading(marked);
  const thousands = thousandsReading(marked);
  const signedTwice = before !== undefined && behind !== undefined;
  if (signedTwice || (decimal === null && thousands === null)) return fail({ code: 'not-a-number', text });
  const scale = (value: number | null) => {
    if (value === null) return null;
    const size = exponent === '' ? value : Number(`${value}${exponent}`);
    return (before ?? behind) === '-' && size !== 0 ? -size : size;
  };
  const entry = {
    text,
    asDecimal: scale(decimal),
    asThousands: scale(thousands),
    unit: unit.toLowerCase().replace(/[° ]/g, ''),
  };
  const readings = [entry.asDecimal, entry.asThousands].filter((value) => value !== null);
  return readings.every(Number.isFinite) ? ok(entry) : fail({ code: 'too-large', text });
}
