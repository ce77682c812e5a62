import type { LinkProblem } from '@/lib/contract/link-problem';
import { fail, type Result } from '@/lib/result/result';
import { packJson, unpackJson } from './packed-json';
import { readSharedNight } from './read-shared-night';
import type { SharedNight } from './shared-night';

/**
 * First character of a payload. A reader that does not know it says so and changes nothing. Version 2 says whose the
 * night is; one that does not is still written as version 1.
 */
const VERSIONS = ['1', '2'] as const;
/** Longest payload read: forty racers fit; what is longer is no link of ours. */
export const MOST_LINK_CHARACTERS = 32_000;
/** A payload may not unfold to more than this, whatever it claims. */
const MOST_BYTES = 400_000;

/** A night as text for the fragment of an address: version, then base64url of a check and the compressed JSON. */
export function packNight(night: SharedNight): string {
  return VERSIONS[night.id === undefined ? 0 : 1] + packJson(night);
}

/** The night in a payload. Anything that is not exactly what was packed is refused with a reason. */
export function unpackNight(text: string): Result<SharedNight, LinkProblem> {
  if (text === '') return fail({ code: 'empty' });
  if (text.length > MOST_LINK_CHARACTERS) return fail({ code: 'too-long', limit: MOST_LINK_CHARACTERS });
  const version = text.slice(0, 1);
  if (!VERSIONS.some((known) => known === version))
    return fail(/[3-9]/.test(version) ? { code: 'newer-version', version } : { code: 'damaged' });
  const json = unpackJson(text.slice(1), MOST_BYTES);
  if (json === null) return fail({ code: 'damaged' });
  return readSharedNight(json.value);
}
