import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import type { PlanHour } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { kelvin, pascal, ratio } from '@/lib/units/quantity';

/** The plan's air at any instant, straight between the two hours around it; null outside the hours. */
export function airBetween(hours: readonly PlanHour[], at: Instant): Air | null {
  const index = hours.findIndex((hour) => hour.at >= at);
  const after = hours[index];
  if (after === undefined) return null;
  if (after.at === at) return after.air;
  const before = hours[index - 1];
  if (before === undefined) return null;
  const share = (at - before.at) / (after.at - before.at);
  const between = (a: number, b: number) => a + (b - a) * share;
  return airAt({
    temperature: kelvin(between(before.air.temperature, after.air.temperature)),
    pressure: pascal(between(before.air.pressure, after.air.pressure)),
    relativeHumidity: ratio(between(before.air.relativeHumidity, after.air.relativeHumidity)),
    pressureFrom: after.air.pressureFrom,
  });
}
