import type { LinkProblem } from '@/lib/contract/link-problem';
import { parseWith } from '@/lib/contract/parse';
import { pathText } from '@/lib/contract/problem';
import { fail, type Result } from '@/lib/result/result';
import { packJson, unpackJson } from './packed-json';
import { type SharedClub, sharedClubSchema } from './shared-club';

/** What a club's payload begins with: no payload of a single night does. */
const CLUB_VERSION = 'c1';
/** A hundred racers with twelve runs each take a third of this. */
const MOST_CLUB_CHARACTERS = 100_000;
const MOST_CLUB_BYTES = 2_000_000;

/** A club's night as text for the fragment of an address. */
export function packClub(night: SharedClub): string {
  return CLUB_VERSION + packJson(night);
}

export const isClubPayload = (payload: string): boolean => /^c\d/.test(payload);

/** The club's night in a payload. Anything that is not exactly what was packed is refused with a reason. */
export function unpackClub(payload: string): Result<SharedClub, LinkProblem> {
  if (payload.length > MOST_CLUB_CHARACTERS) return fail({ code: 'too-long', limit: MOST_CLUB_CHARACTERS });
  const version = payload.slice(0, CLUB_VERSION.length);
  if (version !== CLUB_VERSION)
    return fail(isClubPayload(payload) ? { code: 'newer-version', version } : { code: 'damaged' });
  const json = unpackJson(payload.slice(CLUB_VERSION.length), MOST_CLUB_BYTES);
  if (json === null) return fail({ code: 'damaged' });
  const read = parseWith(sharedClubSchema, json.value);
  if (read.ok) return read;
  const [first] = read.reason;
  const message = first?.reason.code === 'field' ? first.reason.message : '';
  return fail({ code: 'not-a-night', path: pathText(first?.path ?? []), message });
}
