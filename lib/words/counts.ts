import type { LeanCount } from '@/lib/plan/types';

/** "3 of 64 forecasts": a count says how little is known better than a percent does. */
export function riskText(count: LeanCount): string {
  return count.lean === 0 ? `none of ${count.of} forecasts` : `${count.lean} of ${count.of} forecasts`;
}
