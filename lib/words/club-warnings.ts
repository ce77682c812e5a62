import type { Briefing } from '@/lib/club/briefing';
import type { ClubNames } from './club';
import { listing } from './listing';
import type { Voice } from './voice';
import { warningSentences } from './warnings';

/** Told under borrowing, with who can help. */
const TOLD_ELSEWHERE: ReadonlySet<string> = new Set(['no-jet-rich-enough', 'no-jet-lean-enough']);

/** A name list longer than this is no help to anybody. */
const MOST_NAMES = 6;

/** What must be known beside the plans, each said once: what holds for everybody bare, else with the names it is about. */
export function clubWarnings(
  { planned }: Pick<Briefing, 'planned'>,
  names: Pick<ClubNames, 'racer'>,
  voice: Voice,
): readonly string[] {
  const about = new Map<string, readonly string[]>();
  for (const { racer, plan } of planned)
    for (const { code, message } of warningSentences(plan, voice))
      if (!TOLD_ELSEWHERE.has(code))
        about.set(message, [...(about.get(message) ?? []), names.racer(racer.id)]);
  return [...about].map(([message, racers]) => {
    if (racers.length === planned.length) return message;
    const named =
      racers.length <= MOST_NAMES
        ? listing(racers)
        : `${racers.slice(0, MOST_NAMES).join(', ')} and ${racers.length - MOST_NAMES} more`;
    return `${named}: ${message}`;
  });
}
