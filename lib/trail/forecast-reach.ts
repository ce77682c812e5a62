import { HOUR_MS, type Instant } from '@/lib/time/instant';

/** How far forecasts reach back and ahead [h]: the widest of the services used. */
const [BACK_H, AHEAD_H] = [24, 240];

/** Whether a forecast can be had for the start of a ride. */
export function forecastReaches(start: Instant, now: Instant): boolean {
  const ahead = (start - now) / HOUR_MS;
  return ahead >= -BACK_H && ahead <= AHEAD_H;
}
