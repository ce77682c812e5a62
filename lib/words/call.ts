import type { Plan, RunPlan, Swap } from '@/lib/plan/types';
import { localClock, localDate, zoneName } from '@/lib/time/zone';
import { formatTemperature } from '@/lib/units/format';
import { actInOne } from './acts';
import { leanRuns } from './lean-runs';
import { loudSentences, noJetLeanEnough } from './loud';
import { planClock, plannedRuns, runName, runNames } from './runs';
import { settingText } from './settings';
import { clockText } from './times';
import type { Voice } from './voice';

/** `ride`: one setting for the whole of it, with no stop to swap in. */
export type CallVoice = Voice & { readonly ride?: boolean };

/** The plan in a few short sentences; what must be heard first comes first. */
export function callSentence(plan: Plan, voice: CallVoice): string {
  return callSentences(plan, voice).join(' ');
}

export function callSentences(plan: Plan, voice: CallVoice): readonly string[] {
  const planned = plannedRuns(plan);
  const first = planned[0];
  const acts = first === undefined ? [] : actsOfTheCall(plan, first, voice);
  return [...loudSentences(plan), ...acts, ...noJetLeanEnough(plan), ...endOfHours(plan, voice)];
}

function actsOfTheCall(plan: Plan, first: RunPlan, voice: CallVoice): readonly string[] {
  if (voice.ride === true) return rideSentences(plan, first, voice);
  const swaps = plan.swaps.filter((swap) => swap.beforeRun >= first.run);
  if (swaps.length === 0) return [noSwapSentence(plan, first, voice)];
  return [...startSentence(plan, first, swaps), ...swapSentences(plan, swaps, voice)];
}

/** Where the first act comes before the next run, that act is the start. */
function startSentence(plan: Plan, first: RunPlan, swaps: readonly Swap[]): readonly string[] {
  if (swaps[0]?.beforeRun === first.run) return [];
  const stay = plan.runs.some((run) => run.state === 'made');
  return [`${stay ? 'Stay' : 'Start'} on ${settingText(first.setting)}.`];
}

function swapSentences(plan: Plan, swaps: readonly Swap[], { zone }: Voice): readonly string[] {
  const clock = planClock(plan, zone);
  return swaps.map((swap, i) => {
    const last = i === swaps.length - 1;
    return `${actInOne(plan, swap, clock)}${last ? holdsText(plan, swap.beforeRun) : ''}.`;
  });
}

/** "; it holds to the end", said only where it is true of every run from there on. */
function holdsText(plan: Plan, from: number): string {
  if (leanRuns(plan).some(({ run }) => run >= from)) return '';
  const planned = plannedRuns(plan);
  const last = planned[planned.length - 1];
  if (last === undefined || last.run === plan.runs.length - 1) return '; it holds to the end';
  return `; it holds to ${runName(plan, last.run)}`;
}

function noSwapSentence(plan: Plan, first: RunPlan, voice: Voice): string {
  const jets = settingText(first.setting);
  if (leanRuns(plan).length > 0) return `No swap helps: stay on ${jets}.`;
  return `No swap${whenText(plan, voice)}: ${jets} holds ${howManyText(plan)}.`;
}

function howManyText(plan: Plan): string {
  const planned = plannedRuns(plan).map(({ run }) => run);
  if (planned.length > 1 && planned.length === plan.runs.length) return `all ${planned.length} runs`;
  return runNames(plan, planned);
}

/** " tonight" or " today" where the event is on the local day of now; else nothing. */
function whenText(plan: Plan, { zone, now }: Voice): string {
  const start = plan.sortedRuns[0]?.start;
  if (now === undefined || start === undefined || localDate(start, zone) !== localDate(now, zone)) return '';
  return localClock(start, zoneName(zone)) >= '15:00' ? ' tonight' : ' today';
}

function rideSentences(plan: Plan, first: RunPlan, { zone, units }: Voice): readonly string[] {
  const ride = `Ride on ${settingText(first.setting)}, one setting for all of it.`;
  const last = plan.sortedRuns[plan.sortedRuns.length - 1];
  const start = plan.sortedRuns[0];
  if (start === undefined || last === undefined || leanRuns(plan).length > 0) return [ride];
  const hours = plan.hours.filter(({ at }) => at >= start.start && at <= last.end);
  if (hours.length === 0) return [ride];
  const coldest = hours.reduce((a, b) => (b.air.temperature < a.air.temperature ? b : a));
  const temperature = formatTemperature(coldest.air.temperature, units);
  return [
    `${ride.slice(0, -1)}: it is safe for the coldest hour (${temperature} at ${clockText(coldest.at, planClock(plan, zone))}).`,
  ];
}

/** Where the hours end, the plan ends and says so. */
function endOfHours(plan: Plan, { zone }: Voice): readonly string[] {
  const beyond = plan.runs.filter((run) => run.state === 'beyond-hours').map(({ run }) => run);
  if (beyond.length === 0) return plannedRuns(plan).length === 0 ? ['All runs are made.'] : [];
  const end = clockText(plan.hoursEnd, planClock(plan, zone));
  return [`The hours end at ${end}: no call for ${runNames(plan, beyond)}. Add hours to plan further.`];
}
