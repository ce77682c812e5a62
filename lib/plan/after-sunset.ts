import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { nightAround, type SunPlace } from '@/lib/time/sun';

/** Where the sun does not set, its mean evening stands for sunset: 18 h of solar time. */
const MEAN_SUNSET_HOUR = 18;
const DAY_HOURS = 24;

/** Hours from 0 to 24, whatever was given. */
function aroundTheDay(hours: number): number {
  return ((hours % DAY_HOURS) + DAY_HOURS) % DAY_HOURS;
}

/** Hours since the sun set, 0 to 24: an hour before sunset is 23. */
export function hoursAfterSunset(at: Instant, place: SunPlace): number {
  const { sunset } = nightAround(at, place);
  return aroundTheDay(
    sunset === null ? at / HOUR_MS + place.longitude / 15 - MEAN_SUNSET_HOUR : (at - sunset) / HOUR_MS,
  );
}

/** How far two hours after sunset lie apart, the shorter way round the day [h]. */
export function hoursBetween(a: number, b: number): number {
  const apart = aroundTheDay(a - b);
  return Math.min(apart, DAY_HOURS - apart);
}

/** Number of the night an instant belongs to, from one mean solar noon to the next. */
export function nightNumber(at: Instant, { longitude }: SunPlace): number {
  return Math.floor((at / HOUR_MS + longitude / 15 - 12) / DAY_HOURS);
}
