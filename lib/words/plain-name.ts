import { withoutDirections } from '@/lib/contract/name-text';

/** A name without what would turn the words after it round (Unicode bidirectional algorithm, UAX 9) or break a line. */
export function plainName(name: string): string {
  return withoutDirections(name.replace(/\p{Cc}/gu, ''));
}
