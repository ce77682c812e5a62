import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, type Instant } from '@/lib/time/instant';

export type DataAge = 'fresh' | 'ageing' | 'stale' | 'typed';

/** Forecast services renew their runs every 1 to 6 hours; beyond 12 a forecast is one or more runs behind. */
const STILL_FRESH_MS = 3 * HOUR_MS;
const STALE_MS = 12 * HOUR_MS;

export function dataAge({ source }: HourSeries, now: Instant): DataAge {
  const at = source.issuedAt ?? source.fetchedAt;
  if (at === null) return 'typed';
  const age = now - at;
  if (age <= STILL_FRESH_MS) return 'fresh';
  return age <= STALE_MS ? 'ageing' : 'stale';
}
