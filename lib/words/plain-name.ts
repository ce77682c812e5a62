/** A name without what would turn the words after it round (Unicode bidirectional algorithm, UAX 9) or break a line. */
export function plainName(name: string): string {
  return name.replace(/[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '').trim();
}

/** The same inside a sentence that has no markup to hold it apart: between a first strong isolate and its end. */
export function isolatedName(name: string): string {
  return `\u2068${plainName(name)}\u2069`;
}
