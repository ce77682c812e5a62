import * as z from 'zod/mini';

/** Characters that turn the text after them round (UAX #9, Explicit Directional Formatting; the marks of 2.6 with them). */
const DIRECTIONS = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/g;

/**
 * A character that a reader sees: not white space, a control, a filler or a mark without a letter. Fillers are Unicode's
 * Default_Ignorable_Code_Point; the empty pattern of Braille (U+2800) is drawn as nothing too.
 */
const SEEN = /[^\p{White_Space}\p{C}\p{M}\p{Default_Ignorable_Code_Point}\u2800]/u;

/** A name without what would turn the words after it round, and without blanks at its ends. */
export function withoutDirections(name: string): string {
  return name.replace(DIRECTIONS, '').trim();
}

/** Whether there is anything to read in a name. */
export function isSeen(name: string): boolean {
  return SEEN.test(name);
}

const LONGEST_NAME = 80;

/** A text that people are to read something in, of so many characters at most. */
const shownText = (most: number) =>
  z.string().check(
    z.overwrite(withoutDirections),
    z.minLength(1, 'must not be empty'),
    z.maxLength(most, `at most ${most} characters`),
    z.refine((text) => text === '' || isSeen(text), { message: 'must hold something that can be seen' }),
  );

/** A name as it comes in, from wherever. */
export const nameText = shownText(LONGEST_NAME);

/** A name that may be left out; one that shows nothing is none. */
export const nameOrNone = z.string().check(
  z.overwrite((name) => (isSeen(name) ? withoutDirections(name) : '')),
  z.maxLength(LONGEST_NAME, 'at most 80 characters'),
);

/** The number a racer goes by, with letters where a series has them: "14", "7A". */
export const bibText = shownText(8);
