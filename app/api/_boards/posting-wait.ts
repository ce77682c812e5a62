import { callerOf } from '@/app/api/_http/caller-of';
import type { Problem } from '@/app/api/_http/problem';
import { createTokenBuckets } from '@/app/api/_http/token-bucket';
import type { Instant } from '@/lib/time/instant';

/** A board costs planning for a whole night: sixty at once from one caller, then one in ten seconds. Judgement. */
const POSTING = { burst: 60, perSecond: 0.1 };

type Buckets = ReturnType<typeof createTokenBuckets>;
const shared = globalThis as typeof globalThis & { heavyAirPosting?: Buckets };

/** null where this caller may post one more board now. */
export function postingWait(request: Request, now: Instant): Problem | null {
  shared.heavyAirPosting ??= createTokenBuckets(POSTING);
  const wait = shared.heavyAirPosting.take(callerOf(request), now);
  if (wait === null) return null;
  return {
    status: 429,
    detail: `Too many boards posted at once. Wait ${wait} s and post again.`,
    headers: { 'retry-after': String(wait) },
  };
}
