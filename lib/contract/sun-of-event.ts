import type { Run } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { sunEvents } from '@/lib/time/sun';
import type { EventJson } from './event';

const DAY_MS = 24 * HOUR_MS;

/** Sunsets and sunrises from a day before the runs to a day after them; none where the place is not known. */
export function sunOfEvent({ place }: Pick<EventJson, 'place'>, runs: readonly Run[]): readonly Instant[] {
  if (place === undefined || runs.length === 0) return [];
  const times = runs.flatMap(({ start, end }) => [start, end]);
  const span = { from: instant(Math.min(...times) - DAY_MS), to: instant(Math.max(...times) + DAY_MS) };
  const events = sunEvents(span, place).filter(({ kind }) => kind === 'sunset' || kind === 'sunrise');
  return events.map(({ at }) => at);
}
