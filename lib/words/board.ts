import type { Standing } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { countdown } from './countdown';
import { dangerSentences } from './danger';
import { jobWords } from './job';
import { plainName } from './plain-name';
import { questionWords } from './question';
import { dateClockText } from './times';

/** What a phone shows: two lines, the first of which is read at a glance. */
export type MessageWords = { readonly title: string; readonly body: string };

type About = { readonly name: string; readonly standing: Standing; readonly zone: ClockZone };

/** One machine's message, in the words of its plate. */
export function boardMessage(
  kind: 'changed' | 'time' | 'stale',
  { name: given, standing, zone }: About,
  madeAt: Instant | null,
): MessageWords {
  const name = plainName(given);
  if (kind === 'stale') return staleWords(name, { madeAt, now: standing.now, zone });
  const words = jobWords(standing, zone);
  const question = kind === 'changed' ? questionWords(standing, zone) : null;
  const [danger] = dangerSentences(standing.dangers, standing.plan);
  const parts =
    kind === 'time'
      ? [words.when?.window, ...words.lines.slice(0, 2)]
      : [danger, question?.ask, words.when?.window, ...words.lines];
  return {
    title: kind === 'time' ? `${name}, now: ${words.lead}` : `${name}: ${words.lead}`,
    body: parts
      .filter((part) => part !== undefined && part !== '')
      .map(sentence)
      .join(' '),
  };
}

/** "22:05 to 22:25" and the like get the stop of a sentence. */
function sentence(text: string | undefined): string {
  return text === undefined || /[.?!]$/.test(text) ? (text ?? '') : `${text}.`;
}

type Age = { readonly madeAt: Instant | null; readonly now: Instant; readonly zone: ClockZone };

function staleWords(name: string, { madeAt, now, zone }: Age): MessageWords {
  const made =
    madeAt === null
      ? 'No forecast is to be had.'
      : `It is from ${dateClockText(madeAt, zone)}, ${countdown(now, madeAt)}.`;
  return { title: `${name}: the forecast is old`, body: `${made} Read the air at the track and type it in.` };
}
