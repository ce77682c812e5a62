const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;
const MASK = 0xffffffffffffffffn;

/**
 * The same short name for the same text, on every machine and in every release: FNV-1a with 64 bits over UTF-8
 * (RFC 9923), as 16 hexadecimal digits.
 */
export function stableHash(text: string): string {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * PRIME) & MASK;
  return hash.toString(16).padStart(16, '0');
}
