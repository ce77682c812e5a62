import { withoutDirections } from '@/lib/contract/name-text';

/** A name without what would turn the words after it round (Unicode bidirectional algorithm, UAX 9) or break a line. */
export function plainName(name: string): string {
  return withoutDirections(name.replace(/\p{Cc}/gu, ''));
}

/** The same inside a sentence that has no markup to hold it apart: between a first strong isolate and its end. */
export function isolatedName(name: string): string {
  return `\u2068${plainName(name)}\u2069`;
}
