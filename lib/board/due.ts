import type { Standing } from '@/lib/standing/standing';
import { addMinutes, HOUR_MS, type Instant } from '@/lib/time/instant';
import { jobKey, timeOfJob } from './job-time';

/** What a machine's followers know: kept with the board, so that nothing is told twice. */
export type ToldSoFar = {
  /** Key of the job they were told or could read when it was posted; null before the first planning. */
  readonly job: string | null;
  /** Counts the changes, so that a job that comes back is told again. */
  readonly count: number;
  /** The last job whose time was told to have come. */
  readonly timeOf: string | null;
  /** A job that is better news, and since when it holds. */
  readonly waiting: { readonly job: string; readonly since: Instant } | null;
  /** Whether they know that the hours are stale. */
  readonly stale: boolean;
};

export const NOTHING_TOLD: ToldSoFar = { job: null, count: 0, timeOf: null, waiting: null, stale: false };

export type DueMessage = {
  readonly kind: 'changed' | 'time' | 'stale';
  /** The same for the same thing said: a machine's message of this key goes out once. */
  readonly key: string;
  /** After this it would only mislead. */
  readonly until: Instant;
};

type Given = {
  readonly standing: Standing;
  readonly now: Instant;
  readonly stale: boolean;
  /** True where the machine's own people have just said what is in: what follows from it is not news to them. */
  readonly ownAct: boolean;
};

/** Good news waits this long, lest it be taken back. Judgement. */
const GOOD_NEWS_MINUTES = 15;
/** What people only look up is not worth a buzz. */
const QUIET = /^(over|out|no-hours)$/;

/** The messages of one machine that are due, and what its followers know then. */
export function dueMessages(
  told: ToldSoFar,
  given: Given,
): { readonly messages: readonly DueMessage[]; readonly told: ToldSoFar } {
  const changed = changeOf(told, given);
  const time = timeMessage(changed.told, given, changed.message !== null);
  const stale = staleMessage(time.told, given);
  return {
    messages: [changed.message, time.message, stale.message].filter((message) => message !== null),
    told: stale.told,
  };
}

type Step = { readonly message: DueMessage | null; readonly told: ToldSoFar };

function changeOf(told: ToldSoFar, { standing, now, ownAct }: Given): Step {
  const job = jobKey(standing.job);
  if (job === told.job) return { message: null, told: { ...told, waiting: null } };
  const known = { ...told, job, waiting: null };
  if (told.job === null) return { message: null, told: { ...known, timeOf: comeAlready(standing, now) } };
  if (ownAct || QUIET.test(job)) return { message: null, told: { ...known, count: told.count + 1 } };
  if (isGoodNews(told.job, job)) {
    const since = told.waiting?.job === job ? told.waiting.since : now;
    if (addMinutes(since, GOOD_NEWS_MINUTES) > now)
      return { message: null, told: { ...told, waiting: { job, since } } };
  }
  const count = told.count + 1;
  const message = { kind: 'changed', key: `changed|${count}|${job}`, until: untilOf(standing) } as const;
  return { message, told: { ...known, count, timeOf: comeAlready(standing, now) ?? told.timeOf } };
}

/** From "do not race" to racing on the same jets: nothing has to be done about it, so it can wait. */
function isGoodNews(before: string, job: string): boolean {
  return before.startsWith('do-not-race|') && job.startsWith('hold|');
}

/** Whoever is told of a job whose time has come is told that as well. */
function comeAlready({ job, plan }: Standing, now: Instant): string | null {
  return job.kind === 'swap' && timeOfJob(plan, job) <= now ? jobKey(job) : null;
}

function timeMessage(told: ToldSoFar, { standing, now }: Given, toldJustNow: boolean): Step {
  const come = comeAlready(standing, now);
  if (come === null || come === told.timeOf || come !== told.job || toldJustNow)
    return { message: null, told };
  const { job } = standing;
  // Too late to begin: the plan says so, and another buzz helps nobody.
  if (job.kind !== 'swap' || now > job.swap.latestStart)
    return { message: null, told: { ...told, timeOf: come } };
  const message = { kind: 'time', key: `time|${told.count}|${come}`, until: untilOf(standing) } as const;
  return { message, told: { ...told, timeOf: come } };
}

function staleMessage(told: ToldSoFar, { standing, now, stale }: Given): Step {
  const toCome = standing.plan.runs.some(({ state }) => state === 'planned' || state === 'beyond-hours');
  if (!stale || told.stale || !toCome)
    return { message: null, told: { ...told, stale: stale && told.stale } };
  const message = {
    kind: 'stale',
    key: `stale|${now}`,
    until: addMinutes(now, HOUR_MS / 60_000),
  } as const;
  return { message, told: { ...told, stale: true } };
}

/** The start of the run that the job is for. */
function untilOf({ job, plan, now }: Standing): Instant {
  if (job.kind === 'swap') return job.swap.readyBy;
  const next = plan.sortedRuns.find(({ start }) => start > now);
  return next?.start ?? addMinutes(now, 60);
}
