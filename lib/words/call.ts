import type { Setting } from '@/lib/carb/machine';
import { hasBegun } from '@/lib/plan/has-begun';
import type { Plan, PlanWarning, Swap } from '@/lib/plan/types';
import { isDangerous, mostOf } from '@/lib/standing/danger';
import type { Job } from '@/lib/standing/job';
import type { Standing } from '@/lib/standing/standing';
import { localClock, localDate, zoneName } from '@/lib/time/zone';
import { formatTemperature } from '@/lib/units/format';
import { actInOne } from './acts';
import { dangerSentences } from './danger';
import { questionWords } from './question';
import { planClock, plannedRuns, runName, runNames } from './runs';
import { jetsText, settingText } from './settings';
import { clockText } from './times';
import type { Voice } from './voice';

type TooRich = Extract<PlanWarning, { code: 'no-jet-lean-enough' }>;
type Hold = Extract<Job, { kind: 'hold' }>;

/** `ride`: one setting for the whole of it, with no stop to swap in. */
export type CallVoice = Voice & { readonly ride?: boolean };

/** The plan in a few short sentences; what must be heard first comes first. */
export function callSentence(standing: Standing, voice: CallVoice): string {
  return callSentences(standing, voice).join(' ');
}

export function callSentences(standing: Standing, voice: CallVoice): readonly string[] {
  return [...loudSentences(standing, voice), ...quietSentences(standing, voice)];
}

/** What must be heard before anything else: a question that is open, then what not to race on. */
export function loudSentences(standing: Standing, { zone }: Pick<Voice, 'zone'>): readonly string[] {
  const { dangers, plan } = standing;
  const question = questionWords(standing, zone);
  return [
    ...(question === null ? [] : [`${question.ask} ${question.meaning}`]),
    ...dangerSentences(dangers, plan),
  ];
}

/** The call itself, without what is loud. */
export function quietSentences(standing: Standing, voice: CallVoice): readonly string[] {
  const { plan, job } = standing;
  return [...jobSentences(standing, voice), ...richRuns(plan), ...endOfHours(plan, job, voice)];
}

function jobSentences({ plan, job, dangers }: Standing, voice: CallVoice): readonly string[] {
  switch (job.kind) {
    case 'over':
    case 'out':
    case 'no-hours':
      return [];
    case 'do-not-race':
      return goodRuns(plan, job.setting, voice);
    case 'hold':
      return voice.ride === true
        ? rideSentences(plan, job.setting, voice)
        : [noSwapSentence(plan, job, voice)];
    case 'swap':
      if (voice.ride === true)
        return dangers.length > 0
          ? goodRuns(plan, job.swap.to, voice)
          : rideSentences(plan, job.swap.to, voice);
      return [...startSentence(plan, job.swap), ...swapSentences(plan, dangers, voice)];
  }
}

/** Beside runs that are not to be raced: those that are good. */
function goodRuns(plan: Plan, setting: Setting, { ride }: CallVoice): readonly string[] {
  const good = plannedRuns(plan).filter((run) => !isDangerous(run));
  if (ride === true) return [`Of all single settings ${settingText(setting)} is the least bad.`];
  if (good.length === 0) return [];
  const names = runNames(
    plan,
    good.map(({ run }) => run),
  );
  return [`${settingText(setting)} is within its limits for ${names}.`];
}

/** Where the first act comes before the next run, that act is the start; nobody is told to stay on what is not to be raced. */
function startSentence(plan: Plan, swap: Swap): readonly string[] {
  const before = plannedRuns(plan).filter(({ run }) => run < swap.beforeRun);
  const [first] = before;
  if (first === undefined || before.every(isDangerous)) return [];
  const stay = plan.runs.some(hasBegun);
  return [`${stay ? 'Stay' : 'Start'} on ${settingText(first.setting)}.`];
}

function swapSentences(plan: Plan, dangers: Standing['dangers'], { zone }: Voice): readonly string[] {
  const clock = planClock(plan, zone);
  const [first] = plannedRuns(plan);
  const swaps = plan.swaps.filter(({ beforeRun }) => first !== undefined && beforeRun >= first.run);
  return swaps.map((swap, i) => {
    const last = i === swaps.length - 1;
    return `${actInOne(plan, swap, clock)}${last ? holdsText(plan, dangers, swap.beforeRun) : ''}.`;
  });
}

/** "; it holds to the end", said only where it is true of every run from there on. */
function holdsText(plan: Plan, dangers: Standing['dangers'], from: number): string {
  if (dangers.some(({ runs }) => runs.some(({ run }) => run >= from))) return '';
  const planned = plannedRuns(plan);
  const last = planned[planned.length - 1];
  if (last === undefined || last.run === plan.runs.length - 1) return '; it holds to the end';
  return `; it holds to ${runName(plan, last.run)}`;
}

function noSwapSentence(plan: Plan, { setting, runs }: Hold, voice: Voice): string {
  return `No swap${whenText(plan, voice)}: ${settingText(setting)} holds ${howManyText(plan, runs)}.`;
}

function howManyText(plan: Plan, runs: Hold['runs']): string {
  if (runs.length > 1 && runs.length === plan.runs.length) return `all ${runs.length} runs`;
  return runNames(
    plan,
    runs.map(({ run }) => run),
  );
}

/** " tonight" or " today" where the event is on the local day of now; else nothing. */
function whenText(plan: Plan, { zone, now }: Voice): string {
  const start = plan.sortedRuns[0]?.start;
  if (now === undefined || start === undefined || localDate(start, zone) !== localDate(now, zone)) return '';
  return localClock(start, zoneName(zone)) >= '15:00' ? ' tonight' : ' today';
}

function rideSentences(plan: Plan, setting: Setting, { zone, units }: Voice): readonly string[] {
  const ride = `Ride on ${settingText(setting)}, one setting for all of it`;
  const last = plan.sortedRuns[plan.sortedRuns.length - 1];
  const start = plan.sortedRuns[0];
  const hours =
    start === undefined || last === undefined
      ? []
      : plan.hours.filter(({ at }) => at >= start.start && at <= last.end);
  if (hours.length === 0) return [`${ride}.`];
  const coldest = hours.reduce((a, b) => (b.air.temperature < a.air.temperature ? b : a));
  const temperature = formatTemperature(coldest.air.temperature, units);
  return [
    `${ride}: it is safe for the coldest hour (${temperature} at ${clockText(coldest.at, planClock(plan, zone))}).`,
  ];
}

/** Too rich in every jet owned: it costs power, it harms nothing, so it is said after the call. */
function richRuns(plan: Plan): readonly string[] {
  const rich = plan.warnings.filter(
    (warning): warning is TooRich =>
      warning.code === 'no-jet-lean-enough' && plan.runs[warning.run]?.grade === 'rich',
  );
  if (rich.length === 0) return [];
  const names = runNames(
    plan,
    rich.map(({ run }) => run),
  );
  const sizes = mostOf(rich);
  const ask = sizes === null ? '' : `: ${jetsText(sizes)}, no smaller, would be`;
  return [`No jet in the box is lean enough for ${names}${ask}. It runs rich, which costs power.`];
}

/** Where the hours end, the plan ends and says so. */
function endOfHours(plan: Plan, job: Job, { zone }: Voice): readonly string[] {
  if (job.kind === 'over') return ['All runs are over.'];
  if (job.kind === 'out')
    return [
      `Out: not in ${runNames(
        plan,
        job.runs.map(({ run }) => run),
      )}.`,
    ];
  const beyond = plan.runs.filter(({ state }) => state === 'beyond-hours').map(({ run }) => run);
  if (beyond.length === 0) return [];
  const end = clockText(plan.hoursEnd, planClock(plan, zone));
  return [`The hours end at ${end}: no call for ${runNames(plan, beyond)}. Add hours to plan further.`];
}
