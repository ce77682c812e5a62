import { spanFrom } from '@/lib/time/age';
import type { Instant } from '@/lib/time/instant';

/** "in 1 h 12 min", "now", "5 min ago". */
export function countdown(now: Instant, at: Instant): string {
  const { direction, days, hours, minutes } = spanFrom(now, at);
  if (direction === 'now') return 'now';
  const parts = [
    days > 0 ? `${days} d` : '',
    hours > 0 ? `${hours} h` : '',
    days === 0 && minutes > 0 ? `${minutes} min` : '',
  ].filter((part) => part !== '');
  return direction === 'ahead' ? `in ${parts.join(' ')}` : `${parts.join(' ')} ago`;
}
