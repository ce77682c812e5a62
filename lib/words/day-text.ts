import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localDate, localWeekday } from '@/lib/time/zone';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "Sat 16 Jan 2027". */
export function dayText(at: Instant, zone: ClockZone): string {
  return `${DAYS[localWeekday(at, zone) - 1]} ${dateText(localDate(at, zone))}`;
}

/** "16 Jan 2027" of a date, or a time, in ISO 8601, by its own clock. */
export function dateText(iso: string): string {
  const [year, month, day] = iso.slice(0, 10).split('-').map(Number);
  return `${day} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}
