import type { PrecacheEntry } from 'serwist';

/** A file that is kept for use without a network. */
export type KeptFile = PrecacheEntry & {
  /** The first 64 bits of the SHA-256 of what is in it, as 16 hexadecimal digits: against accidents, not forgers. */
  readonly digest: string;
};

type Shelf = {
  readonly cache: Pick<Cache, 'match' | 'put' | 'delete'>;
  /** Under which address a file is kept. */
  readonly keyOf: (url: string) => string | undefined;
};

async function digestOf(response: Response): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
  return Array.from(new Uint8Array(hash, 0, 8), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Whether a kept answer is whole; one that can no longer be read is not. */
const isWhole = (response: Response | undefined, digest: string): Promise<boolean> =>
  response === undefined
    ? Promise.resolve(false)
    : digestOf(response).then(
        (found) => found === digest,
        () => false,
      );

/**
 * Gets again what a browser has thrown away or spoiled since it was kept, and lets go of what is spoiled where the
 * server has another by now. Without a network all stays as it is.
 */
export async function healKept(files: readonly KeptFile[], { cache, keyOf }: Shelf): Promise<void> {
  for (const { url, digest } of files) {
    const key = keyOf(url);
    if (key === undefined) continue;
    const kept = await cache.match(key);
    if (await isWhole(kept, digest)) continue;
    const fresh = await fetch(url, { cache: 'reload', credentials: 'same-origin' }).catch(() => null);
    if (fresh === null) return;
    if (fresh.ok && !fresh.redirected && (await isWhole(fresh.clone(), digest))) await cache.put(key, fresh);
    else if (kept !== undefined) await cache.delete(key);
  }
}
