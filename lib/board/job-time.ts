import type { Plan } from '@/lib/plan/types';
import type { Job } from '@/lib/standing/job';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';

type SwapJob = Extract<Job, { kind: 'swap' }>;

/** A gap of hours is no appointment of hours: people are called at most this long before they must begin. Judgement. */
const LONGEST_MS = HOUR_MS;

/** When a swap's time comes, whatever the clock shows: at the end of the run before it, in the last hour it can wait. */
export function timeOfJob({ sortedRuns }: Pick<Plan, 'sortedRuns'>, { swap }: SwapJob): Instant {
  const ends = sortedRuns.slice(0, swap.beforeRun).map(({ end }) => end);
  const free = Math.max(swap.latestStart - LONGEST_MS, ...ends);
  return instant(Math.min(free, swap.latestStart));
}

/**
 * What a machine is to do, as a key that stays while it is the same job: what goes in and by when. A job's window opens
 * "now" where nothing keeps it shut, so its start is no part of the key.
 */
export function jobKey(job: Job): string {
  switch (job.kind) {
    case 'swap':
      return ['swap', ...job.swap.to.mains, job.swap.to.trim ?? '', job.swap.latestStart].join('|');
    case 'hold':
    case 'do-not-race':
      return [job.kind, ...job.setting.mains, job.setting.trim ?? ''].join('|');
    case 'no-hours':
    case 'out':
    case 'over':
      return job.kind;
  }
}
