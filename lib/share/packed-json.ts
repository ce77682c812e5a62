import { deflateSync, inflateSync } from 'fflate';
import { crc32 } from '@/lib/store/crc32';
import { fromBase64Url, toBase64Url } from './base64url';
import { DICTIONARY_1 } from './link-dictionary';

const CHECK_BYTES = 4;

const dictionary = new TextEncoder().encode(DICTIONARY_1);

/** A value as text for an address: base64url of a check and the compressed JSON. */
export function packJson(value: unknown): string {
  const json = new TextEncoder().encode(JSON.stringify(value));
  const squeezed = deflateSync(json, { level: 9, dictionary });
  const bytes = new Uint8Array(CHECK_BYTES + squeezed.length);
  new DataView(bytes.buffer).setUint32(0, crc32(json));
  bytes.set(squeezed, CHECK_BYTES);
  return toBase64Url(bytes);
}

/** The checked JSON value inside, or null where a single byte is not as it was packed or it unfolds to more than may be. */
export function unpackJson(text: string, mostBytes: number): { readonly value: unknown } | null {
  const bytes = fromBase64Url(text);
  if (bytes === null || bytes.length <= CHECK_BYTES) return null;
  try {
    const expected = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0);
    // A fixed output buffer is the cap: what would not fit is cut off and then fails the check.
    const json = inflateSync(bytes.subarray(CHECK_BYTES), { dictionary, out: new Uint8Array(mostBytes) });
    if (crc32(json) !== expected) return null;
    return { value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(json)) };
  } catch {
    return null;
  }
}
