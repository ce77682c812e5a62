import { createDecipheriv, createECDH, hkdfSync } from 'node:crypto';

/** A phone's side of a subscription. */
export type PhoneKeys = { readonly privateKey: Buffer; readonly auth: Buffer };

const info = (text: string) => Buffer.from(`${text}\0`, 'latin1');
const hkdf = (salt: Buffer, key: Buffer, about: Buffer, length: number) =>
  Buffer.from(hkdfSync('sha256', key, salt, about, length));

/** Opens a push message as a browser does: RFC 8291, sections 3.3 and 3.4, over RFC 8188, section 2; one record. */
export function openPush(body: Buffer, { privateKey, auth }: PhoneKeys): string {
  const salt = body.subarray(0, 16);
  const idLength = body.readUInt8(20);
  const serverKey = body.subarray(21, 21 + idLength);
  const sealed = body.subarray(21 + idLength);
  const phone = createECDH('prime256v1');
  phone.setPrivateKey(privateKey);
  const shared = phone.computeSecret(serverKey);
  const about = Buffer.concat([info('WebPush: info'), phone.getPublicKey(), serverKey]);
  const key = hkdf(auth, shared, about, 32);
  const cipher = createDecipheriv(
    'aes-128-gcm',
    hkdf(salt, key, info('Content-Encoding: aes128gcm'), 16),
    hkdf(salt, key, info('Content-Encoding: nonce'), 12),
  );
  cipher.setAuthTag(sealed.subarray(-16));
  const padded = Buffer.concat([cipher.update(sealed.subarray(0, -16)), cipher.final()]);
  // The last record ends with a 2 and zeros.
  const end = padded.lastIndexOf(2);
  if (end < 0 || padded.subarray(end + 1).some((byte) => byte !== 0)) throw new Error('not padded as said');
  return padded.subarray(0, end).toString('utf8');
}
