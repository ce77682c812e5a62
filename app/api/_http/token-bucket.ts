/** How fast a client may ask: a burst at once, then a steady rate. */
export type Rate = { readonly burst: number; readonly perSecond: number };

type Bucket = { tokens: number; at: number };

/** More clients than this are not remembered; the one that asked longest ago is forgotten first. */
const MOST_CLIENTS = 10_000;

/**
 * Token buckets, one per client. `take` gives null where the client may go on, else the seconds to wait.
 * The clock comes in as milliseconds, so that a test can turn it.
 */
export function createTokenBuckets(rate: Rate): { take(client: string, nowMs: number): number | null } {
  // In the order in which they asked last.
  const buckets = new Map<string, Bucket>();
  /** An empty bucket is full again after this: a client who was silent for so long is like one who never came. */
  const fillMs = (rate.burst / rate.perSecond) * 1000;
  const forget = (nowMs: number): void => {
    for (const [client, { at }] of buckets) {
      if (nowMs - at < fillMs && buckets.size <= MOST_CLIENTS) return;
      buckets.delete(client);
    }
  };
  return {
    take(client, nowMs) {
      const old = buckets.get(client) ?? { tokens: rate.burst, at: nowMs };
      const earned = (Math.max(0, nowMs - old.at) / 1000) * rate.perSecond;
      const tokens = Math.min(rate.burst, old.tokens + earned);
      const may = tokens >= 1;
      buckets.delete(client);
      buckets.set(client, { tokens: may ? tokens - 1 : tokens, at: nowMs });
      forget(nowMs);
      return may ? null : Math.max(1, Math.ceil((1 - tokens) / rate.perSecond));
    },
  };
}
