import type { Job } from '@/lib/standing/job';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { actSentences } from './acts';
import { countdown } from './countdown';
import { planClock, runName, runNames } from './runs';
import { settingText } from './settings';
import { clockText } from './times';

/** The one thing to do next, in words. */
export type JobWords = {
  /** "Fit 420". */
  readonly lead: string;
  /** "22:05 to 22:25" and "in 1 h 12 min"; null where nothing is to be done by the clock. */
  readonly when: { readonly window: string; readonly away: string } | null;
  /** Where, by when, and why. */
  readonly lines: readonly string[];
  /** What the button says that tells of it; null while it is too early to ask, or there is nothing to tell. */
  readonly done: string | null;
};

type SwapJob = Extract<Job, { kind: 'swap' }>;

export function jobWords(standing: Standing, zone: ClockZone): JobWords {
  const { job, plan } = standing;
  const quiet = (lead: string, ...lines: readonly string[]): JobWords => ({
    lead,
    when: null,
    lines,
    done: null,
  });
  const names = (runs: readonly { readonly run: number }[]) =>
    runNames(
      plan,
      runs.map(({ run }) => run),
    );
  switch (job.kind) {
    case 'swap':
      return swapWords(standing, job, zone);
    case 'hold': {
      const last = job.runs.at(-1);
      return quiet(
        'No swap',
        `${settingText(job.setting)} holds ${last === undefined ? 'for now' : `through ${runName(plan, last.run)}`}.`,
      );
    }
    case 'do-not-race':
      return quiet(`Do not race on ${settingText(job.setting)}`, `${names(job.runs)}. No swap helps.`);
    case 'no-hours':
      return quiet('No call', `The hours do not reach ${names(job.runs)}. Add hours.`);
    case 'out':
      return quiet('Out', `Not in ${names(job.runs)}. ${OVER}`);
    case 'over':
      return quiet('All runs are over', OVER);
  }
}

const OVER = 'Log how each run went while you remember it: the plugs tell more than any forecast.';

function swapWords({ plan, now, question }: Standing, job: SwapJob, zone: ClockZone): JobWords {
  const words = actSentences(plan, { zone }).find(({ swap }) => swap === job.swap);
  return {
    lead: words?.act ?? '',
    when: { window: words?.window ?? '', away: awayText(job, now, zone, planClock(plan, zone).from) },
    lines: words === undefined ? [] : [words.where, words.begin, words.why],
    // While it is asked whether a swap was made, that question has the buttons.
    done: job.canBeDone && question === null ? `I have fitted ${settingText(job.swap.to)}` : null,
  };
}

function awayText(
  { swap, time }: SwapJob,
  now: Standing['now'],
  zone: ClockZone,
  from: Standing['now'] | undefined,
): string {
  if (time === 'ahead') return countdown(now, swap.windowStart);
  if (time === 'open') return `begin ${countdown(now, swap.latestStart)} at the latest`;
  const start = clockText(swap.readyBy, from === undefined ? { zone } : { zone, from });
  return `too late for ${start}: ask for a later start or sit it out`;
}
