import { type BriefingRow, briefingHours, briefingRow, briefingSpan } from '@/lib/club/matrix';
import type { PlannedRacer } from '@/lib/club/racer';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { type ClockZone, hourTicks } from '@/lib/time/zone';
import { type Clock, clockText } from '@/lib/words/times';

/** The matrix as it is shown: the hours with their clock times, a row for each racer. */
export type ShownMatrix = {
  readonly hours: readonly { readonly at: Instant; readonly clock: string }[];
  readonly rows: readonly BriefingRow[];
};

export function matrixOf(planned: readonly PlannedRacer[], zone: ClockZone): ShownMatrix {
  const span = briefingSpan(planned);
  if (span === null) return { hours: [], rows: [] };
  // The hour that the first moment lies in has begun before it.
  const ticks = hourTicks({ from: instant(span.from - HOUR_MS), to: span.to }, zone);
  const hours = briefingHours(planned, ticks);
  const clock: Clock = { zone, from: span.from };
  return {
    hours: hours.map((at) => ({ at, clock: clockText(at, clock) })),
    rows: planned.map((each) => briefingRow(each, hours)),
  };
}
