import type { LinkProblem } from '@/lib/contract/link-problem';
import type { Result } from '@/lib/result/result';
import { payloadOf } from './addresses';
import { unpackNight } from './night-link';
import type { SharedNight } from './shared-night';

/** What came of one link or file. */
export type OpenedNight = { readonly label: string; readonly read: Result<SharedNight, LinkProblem> };

/** Shorter than any night; words of a chat around the links. */
const SHORTEST_LINK = 60;

/** Every link in a pasted text, as a group's chat has them among other words; one that is quoted again counts once. */
export function readSharedLinks(text: string): readonly OpenedNight[] {
  const payloads = text
    .split(/\s+/)
    .filter((word) => word.length >= SHORTEST_LINK)
    .map(payloadOf);
  return [...new Set(payloads)].map((payload, i) => ({ label: `Link ${i + 1}`, read: unpackNight(payload) }));
}
