import { expectOk } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { fromLocal } from '@/lib/time/local';
import { localDate } from '@/lib/time/zone';

/** 18:15 in the demo night's zone on a January evening. */
export const EVENING = '2027-01-17T00:15:00Z';

/** When a test opens its pages, where it says no time of its own. `npm run clocks` sets other ones. */
export const NOW = process.env.TEST_NOW ?? EVENING;

/** That of the demo night. */
const ZONE = 'America/Chicago';

/** The date of the evening that `NOW` belongs to, from noon to noon, in the demo night's zone. */
export const TONIGHT = localDate(instant(Date.parse(NOW) - 12 * HOUR_MS), ZONE);

/** An instant (ISO 8601), or a clock such as 18:15 tonight. */
export function instantOf(now: string): Instant {
  if (/^\d\d:\d\d$/.test(now)) return expectOk(fromLocal(TONIGHT, now, ZONE)).at;
  return instant(Date.parse(now));
}

/** A clock tonight moves with `NOW`; a whole instant does not. */
export const isFixed = (now: string): boolean => now !== NOW && now.includes('T');
