/** How fast a client may ask: a burst at once, then a steady rate. */
export type Rate = { readonly burst: number; readonly perSecond: number };

type Bucket = { tokens: number; at: number };

/** More clients than this are remembered no longer; the one that asked longest ago is forgotten first. */
const MOST_CLIENTS = 10_000;

/**
 * Token buckets, one per client. `take` gives null where the client may go on, else the seconds to wait.
 * The clock comes in as milliseconds, so that a test can turn it.
 */
export function createTokenBuckets(rate: Rate): { take(client: string, nowMs: number): number | null } {
  const buckets = new Map<string, Bucket>();
  return {
    take(client, nowMs) {
      const old = buckets.get(client) ?? { tokens: rate.burst, at: nowMs };
      const earned = (Math.max(0, nowMs - old.at) / 1000) * rate.perSecond;
      const tokens = Math.min(rate.burst, old.tokens + earned);
      const may = tokens >= 1;
      buckets.delete(client);
      buckets.set(client, { tokens: may ? tokens - 1 : tokens, at: nowMs });
      const oldest = buckets.size > MOST_CLIENTS ? buckets.keys().next().value : undefined;
      if (oldest !== undefined) buckets.delete(oldest);
      return may ? null : Math.max(1, Math.ceil((1 - tokens) / rate.perSecond));
    },
  };
}
