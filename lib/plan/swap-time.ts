import type { Instant } from '@/lib/time/instant';

/** When a swap is to be begun: from when on it can be, and once that is over, by when it has to be. */
export function swapTime(
  from: Instant,
  latest: Instant,
  now: Instant,
): { readonly at: Instant; readonly due: boolean } {
  const due = now >= from;
  return { at: due ? latest : from, due };
}
