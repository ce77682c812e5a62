import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { listing } from '@/lib/words/listing';
import { type Clock, windowText } from '@/lib/words/times';

/** Hours in a row stand as one stretch. */
function stretches(hours: readonly Instant[]): readonly (readonly [Instant, Instant])[] {
  const sorted = [...hours].sort((a, b) => a - b);
  const starts = sorted.filter((at, i) => at - (sorted[i - 1] ?? Number.NEGATIVE_INFINITY) > HOUR_MS);
  const ends = sorted.filter((at, i) => (sorted[i + 1] ?? Number.POSITIVE_INFINITY) - at > HOUR_MS);
  return starts.map((start, i) => [start, ends[i] ?? start]);
}

/** Which hours the service has no value for; '' where it has all. */
export function missingSentence(hours: readonly Instant[], clock: Clock): string {
  if (hours.length === 0) return '';
  const texts = stretches(hours).map(([from, to]) => windowText(from, to, clock));
  return `No value for ${listing(texts)}: left out. Type what you know better.`;
}

/** Which hours were filled in from the hours around them; '' where none were. */
export function filledSentence(hours: readonly Instant[], clock: Clock): string {
  if (hours.length === 0) return '';
  const texts = stretches(hours).map(([from, to]) => windowText(from, to, clock));
  return `Filled in from the hours beside them: ${listing(texts)}.`;
}
