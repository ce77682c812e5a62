import type { Standing } from '@/lib/standing/standing';
import { addMinutes, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { timeOfJob } from './job-time';

/** A forecast is asked for again this often; services renew theirs every one to six hours. */
const FORECAST_MINUTES = 15;
const BEFORE_JOB_MINUTES = 15;
/** "It is in" can be said from this long before a swap's window on (`lib/standing/job.ts`). */
const EARLY_MINUTES = 30;

/** The next moment at which something of the plans changes by the clock alone; null where nothing is to come. */
export function nextTurn(standings: readonly Standing[], now: Instant): Instant | null {
  const moments = standings.flatMap(({ plan, job }) => [
    ...plan.sortedRuns.flatMap(({ start, end }) => [start, end]),
    ...(job.kind === 'swap'
      ? [
          addMinutes(timeOfJob(plan, job), -BEFORE_JOB_MINUTES),
          timeOfJob(plan, job),
          addMinutes(job.swap.windowStart, -EARLY_MINUTES),
          job.swap.windowStart,
          instant(job.swap.latestStart + 1000),
        ]
      : []),
  ]);
  const coming = moments.filter((at) => at > now);
  return coming.length === 0 ? null : instant(Math.min(...coming));
}

/** When to plan again: at the next turn, or when a newer forecast may be there; null when all runs are over. */
export function nextLook(turn: Instant | null, now: Instant): Instant | null {
  return turn === null ? null : instant(Math.min(turn, now + FORECAST_MINUTES * MINUTE_MS));
}
