import type { Instant } from '@/lib/time/instant';
import { localDate, localWeekday } from '@/lib/time/zone';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** "Saturday 2027-01-16". */
export function dayText(at: Instant, zone: string): string {
  return `${DAYS[localWeekday(at, zone) - 1]} ${localDate(at, zone)}`;
}
