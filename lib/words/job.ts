import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import type { Job } from '@/lib/standing/job';
import type { Standing } from '@/lib/standing/standing';
import { addMinutes } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { swapWindowText } from './acts';
import { countdown } from './countdown';
import { dangerPoints } from './danger';
import { IT_IS_IN } from './it-is-in';
import { planClock, runName, runNames } from './runs';
import { type ActPart, actParts, actText, settingText } from './settings';
import { clockText } from './times';

/**
 * How the job stands, for the shape it is shown in. `due`: the last minutes in which it can be begun; `late`: they are
 * over; `stop`: nothing helps.
 */
export type JobShape = 'ahead' | 'due' | 'late' | 'stop' | 'quiet';

/** The one thing to do next, in words. */
export type JobWords = {
  readonly shape: JobShape;
  /** "20:00", "in 30 min" and "20:00 to 20:15"; null where nothing is to be done by the clock. */
  readonly when: { readonly clock: string; readonly away: string; readonly window: string } | null;
  /** "Put in 420", and the same in pieces, so that the numbers that change can be marked. */
  readonly lead: string;
  readonly parts: readonly ActPart[];
  /** Where, by when, and why. */
  readonly lines: readonly string[];
  /** What the button says that tells of it; null while it is too early to ask, or there is nothing to tell. */
  readonly done: string | null;
};

type SwapJob = Extract<Job, { kind: 'swap' }>;

/** The block turns over this long before a swap has to be begun. */
const DUE_MINUTES = 15;

export function jobWords(standing: Standing, zone: ClockZone): JobWords {
  const { job, plan } = standing;
  const quiet = (lead: string, ...lines: readonly string[]): JobWords => ({
    shape: 'quiet',
    when: null,
    lead,
    parts: [{ text: lead, changed: false }],
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
      return {
        ...quiet(`Do not race on ${settingText(job.setting)}`, ...dangerPoints(standing.dangers, plan)),
        shape: 'stop',
      };
    case 'no-hours':
      return quiet('No call', `The hours do not reach ${names(job.runs)}. Add hours.`);
    case 'out':
      return quiet('Out', `Not in ${names(job.runs)}. ${OVER}`);
    case 'over':
      return quiet('All runs are over', OVER);
  }
}

const OVER = 'Log each run while you remember it.';

function swapWords(standing: Standing, job: SwapJob, zone: ClockZone): JobWords {
  const { plan, now, question } = standing;
  const { swap, time } = job;
  const clock = planClock(plan, zone);
  const due = time === 'open' || (time === 'ahead' && now >= addMinutes(swap.latestStart, -DUE_MINUTES));
  return {
    shape: time === 'late' ? 'late' : due ? 'due' : 'ahead',
    when: {
      clock: clockText(time === 'ahead' ? swap.windowStart : swap.latestStart, clock),
      away: awayText(standing, job, zone),
      window: swapWindowText(swap, clock),
    },
    lead: actText(swap.from, swap.to),
    parts: actParts(swap.from, swap.to),
    lines: [
      ...(time === 'late' ? ['Ask for a later start, or sit it out.'] : [whereText(standing, job, zone)]),
      // What is not to be raced on says more than why.
      ...(standing.dangers.length > 0 ? [] : [reasonText(standing, job)]),
    ],
    // While it is asked whether a swap was made, that question has the buttons.
    done: job.canBeDone && question === null ? doneText(swap.to) : null,
  };
}

/** A machine of more carburettors has a second row of jets, and the button no room for it beside the jets it tells of. */
const MOST_NAMED = 3;

const doneText = (put: Setting): string =>
  put.mains.length > MOST_NAMED ? IT_IS_IN : `Done: ${settingText(put)} is in`;

function awayText({ plan, now }: Standing, { swap, time }: SwapJob, zone: ClockZone): string {
  if (time === 'ahead') return countdown(now, swap.windowStart);
  if (time === 'late') return `too late for ${runName(plan, swap.beforeRun)}`;
  const left = countdown(now, swap.latestStart).replace(/^in /, '');
  const begin = swap.kind === 'trim' ? 'turn it' : 'start';
  return left === 'now'
    ? `${begin} now, for ${clockText(swap.readyBy, planClock(plan, zone))}`
    : `${begin} within ${left}`;
}

/** "After Round 2. Start by 20:15."; after a run that is not to be raced the clock alone says when. */
function whereText({ plan, dangers }: Standing, { swap, time }: SwapJob, zone: ClockZone): string {
  const clock = planClock(plan, zone);
  const before = plan.runs[swap.beforeRun - 1];
  const isLeftOut = dangers.some(({ runs }) => runs.some(({ run }) => run === before?.run));
  const by =
    swap.kind === 'trim'
      ? `Done by ${clockText(swap.readyBy, clock)}.`
      : `${time === 'open' ? 'Ready' : 'Start'} by ${clockText(time === 'open' ? swap.readyBy : swap.latestStart, clock)}.`;
  if (isLeftOut) return by;
  return before === undefined
    ? `Before ${runName(plan, swap.beforeRun)}. ${by}`
    : `After ${runName(plan, before.run)}. ${by}`;
}

/** The one cause, with the first run at risk: "410 goes lean by Round 7.", or "410 is lean." where that is so now. */
function reasonText({ plan, inNow, mixture }: Standing, { swap: { from, reason } }: SwapJob): string {
  const old = settingText(from);
  const state = mixture !== null && sameSetting(inNow.setting, from) ? mixture.state : null;
  switch (reason.code) {
    case 'old-turns-lean':
      return state === 'lean' ? `${old} is lean.` : `${old} goes lean by ${runName(plan, reason.run)}.`;
    case 'old-drowned':
      return `${old} is too rich to run by ${runName(plan, reason.run)}.`;
    case 'old-turns-rich':
      return `${old} ${state === 'rich' ? 'is rich' : `goes rich by ${runName(plan, reason.run)}`}: it costs power.`;
    case 'power':
      return `It gains power over ${old}.`;
    case 'as-accepted':
      return 'It is in your plan.';
  }
}
