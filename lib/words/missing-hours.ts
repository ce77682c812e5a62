import type { Instant } from '@/lib/time/instant';
import { type Clock, hoursText } from '@/lib/words/times';

/** Which hours the service has no value for; '' where it has all. */
export function missingSentence(hours: readonly Instant[], clock: Clock): string {
  if (hours.length === 0) return '';
  return `No value for ${hoursText(hours, clock)}: left out. Type what you know better.`;
}

/** Which hours were filled in from the hours around them; '' where none were. */
export function filledSentence(hours: readonly Instant[], clock: Clock): string {
  if (hours.length === 0) return '';
  return `Filled in from the hours beside them: ${hoursText(hours, clock)}.`;
}
