import { READING_MINUTES, READING_NOTICE_MINUTES } from '@/lib/plan/judgement';
import { type ReadingWorth, readingWorth, runToReadFor } from '@/lib/plan/reading-worth';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { addMinutes } from '@/lib/time/instant';

/**
 * The reading to ask for now; null where none is. Asked from half an hour before it tells most, while there is time to
 * act on it, and once for a run: whatever was read since then, heard or still in question, was the answer.
 */
export function readingToAskFor(request: PlanRequest, plan: Plan): ReadingWorth | null {
  const { readings, now, options } = request;
  const run = runToReadFor(plan, request);
  if (run === null) return null;
  const lead = options.swapMinutes + READING_MINUTES + READING_NOTICE_MINUTES;
  const from = addMinutes(plan.sortedRuns[run]!.start, -lead);
  if (now < from || readings.some(({ at }) => at >= from && at <= now)) return null;
  const worth = readingWorth(request, plan);
  return worth?.pays === true ? worth : null;
}
