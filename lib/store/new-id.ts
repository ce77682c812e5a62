/** A fresh key for a record. Not crypto.randomUUID, which plain http on a local network does not have. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
