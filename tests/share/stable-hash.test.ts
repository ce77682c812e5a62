import { describe, expect, test } from 'vitest';
import { stableHash } from '@/lib/share/stable-hash';

describe('The hash behind a UID', () => {
  /** The FNV-1a 64-bit vectors of RFC 9923 (the FNV algorithm), appendix with test vectors; from memory. */
  test.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('of %j is the published one', (text, hash) => {
    expect(stableHash(text)).toBe(hash);
  });

  test('tells apart texts that differ in one letter outside ASCII', () => {
    expect(stableHash('Øl')).not.toBe(stableHash('Öl'));
  });
});
