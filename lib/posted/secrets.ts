import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const SECRET_BYTES = 16;
/** A board's name in addresses; no secret, yet nobody finds it by counting. */
const ID_BYTES = 9;

/** 128 random bits, as text for an address. */
export function newSecret(): string {
  return randomBytes(SECRET_BYTES).toString('base64url');
}

export function newBoardId(): string {
  return randomBytes(ID_BYTES).toString('base64url');
}

/** What is kept of a secret, and how a long name is made short. */
export function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('base64url');
}

/** Whether a secret is the one a hash was made of; takes as long whatever it is. */
export function isSecretOf(secret: string, hash: string): boolean {
  const [given, kept] = [Buffer.from(hashOf(secret)), Buffer.from(hash)];
  return given.length === kept.length && timingSafeEqual(given, kept);
}
