import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localDate, localWeekday } from '@/lib/time/zone';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "Sat 16 Jan 2027". */
export function dayText(at: Instant, zone: ClockZone): string {
  const [year, month, day] = localDate(at, zone).split('-').map(Number);
  return `${DAYS[localWeekday(at, zone) - 1]} ${day} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}
