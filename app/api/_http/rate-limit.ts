import { clientOf } from './client-of';
import { createTokenBuckets } from './token-bucket';

/** Enough for a paddock behind one address; a flood is told to wait. */
const REQUESTS_PER_MINUTE = 3_000;
/** Seconds' worth of requests that may come at once: a page that opens with everybody watching. */
const BURST_SECONDS = 40;

type Environment = Readonly<Record<string, string | undefined>>;
export type RateLimit = (request: Request, nowMs: number) => number | null;

function readWhole(text: string | undefined, otherwise: number): number {
  return text !== undefined && /^\d{1,9}$/.test(text) ? Number(text) : otherwise;
}

/** How many proxies of one's own stand in front. */
export function trustedProxies(environment: Environment): number {
  return readWhole(environment.TRUSTED_PROXIES, 0);
}

/**
 * The limit that the environment asks for: `REQUESTS_PER_MINUTE` (0 turns it off) and `TRUSTED_PROXIES`, the number of
 * proxies of one's own in front of this server.
 */
export function createRateLimit(environment: Environment): RateLimit {
  const perMinute = readWhole(environment.REQUESTS_PER_MINUTE, REQUESTS_PER_MINUTE);
  if (perMinute === 0) return () => null;
  const perSecond = perMinute / 60;
  const trusted = trustedProxies(environment);
  const buckets = createTokenBuckets({ burst: Math.max(1, perSecond * BURST_SECONDS), perSecond });
  return (request, nowMs) => buckets.take(clientOf(request.headers, trusted), nowMs);
}
