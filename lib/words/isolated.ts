/** Letters written from the right, and what belongs to them (Unicode's Bidi_Class R and AL, by their blocks). */
const FROM_THE_RIGHT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFE\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/**
 * A name held apart from its sentence (UAX #9, FSI and PDI), so that a name written from the right leaves the jets after
 * it as they are: "needs 423" may not become "423 needs". Names written from the left stay as they are; what turns text
 * round by force is taken off where a name comes in (`lib/contract/name-text.ts`).
 */
export function isolated(name: string): string {
  return FROM_THE_RIGHT.test(name) ? `\u2068${name}\u2069` : name;
}
