import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import { hourAt } from '@/lib/hours/at';
import type { PlanHour } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';

/** The air as it stands, and as it stood an hour ago; null where the hours do not reach back so far. */
export type AirNow = { readonly air: Air; readonly hourAgo: Air | null };

/** The air of a plan at an instant, readings in it; null where its hours do not reach. */
export function airNow(hours: readonly PlanHour[], now: Instant): AirNow | null {
  const track = {
    hours: hours.map(({ at, origin, air }) => ({
      at,
      origin,
      temperature: air.temperature,
      pressure: air.pressure,
      pressureFrom: air.pressureFrom,
      relativeHumidity: air.relativeHumidity,
      spread: null,
    })),
  };
  const airOf = (at: Instant): Air | null => {
    const hour = hourAt(track, at);
    return hour === null ? null : airAt(hour);
  };
  const air = airOf(now);
  return air === null ? null : { air, hourAgo: airOf(instant(now - HOUR_MS)) };
}
