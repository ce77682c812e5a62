import { deflateSync, inflateSync } from 'fflate';
import type { LinkProblem } from '@/lib/contract/link-problem';
import { fail, type Result } from '@/lib/result/result';
import { crc32 } from '@/lib/store/crc32';
import { fromBase64Url, toBase64Url } from './base64url';
import { DICTIONARY_1 } from './link-dictionary';
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
const CHECK_BYTES = 4;

const dictionary = new TextEncoder().encode(DICTIONARY_1);

/** A night as text for the fragment of an address: version, then base64url of a check and the compressed JSON. */
export function packNight(night: SharedNight): string {
  const json = new TextEncoder().encode(JSON.stringify(night));
  const squeezed = deflateSync(json, { level: 9, dictionary });
  const bytes = new Uint8Array(CHECK_BYTES + squeezed.length);
  new DataView(bytes.buffer).setUint32(0, crc32(json));
  bytes.set(squeezed, CHECK_BYTES);
  return VERSIONS[night.id === undefined ? 0 : 1] + toBase64Url(bytes);
}

/** The night in a payload. Anything that is not exactly what was packed is refused with a reason. */
export function unpackNight(text: string): Result<SharedNight, LinkProblem> {
  if (text === '') return fail({ code: 'empty' });
  if (text.length > MOST_LINK_CHARACTERS) return fail({ code: 'too-long', limit: MOST_LINK_CHARACTERS });
  const version = text.slice(0, 1);
  if (!VERSIONS.some((known) => known === version))
    return fail(/[3-9]/.test(version) ? { code: 'newer-version', version } : { code: 'damaged' });
  const bytes = fromBase64Url(text.slice(1));
  const json = bytes === null ? null : unfold(bytes);
  if (json === null) return fail({ code: 'damaged' });
  return readSharedNight(json.value);
}

/** The checked JSON value inside, or null where a single byte is not as it was packed. */
function unfold(bytes: Uint8Array): { readonly value: unknown } | null {
  if (bytes.length <= CHECK_BYTES) return null;
  try {
    const expected = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0);
    // A fixed output buffer is the cap: what would not fit is cut off and then fails the check.
    const json = inflateSync(bytes.subarray(CHECK_BYTES), { dictionary, out: new Uint8Array(MOST_BYTES) });
    if (crc32(json) !== expected) return null;
    return { value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(json)) };
  } catch {
    return null;
  }
}
