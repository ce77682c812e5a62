import { type ContractProblem, pathText } from '@/lib/contract/problem';
import type { NightProblem } from '@/lib/night/night';
import type { PlanProblem } from '@/lib/plan/types';
import { contractProblemSentence } from './contract-problems';
import { planProblemSentence } from './plan-problems';
import type { Voice } from './voice';

export type ProblemVoice = Voice & { readonly runNames: readonly string[] };

const TITLE: Readonly<Record<NightProblem['code'], string>> = {
  machine: 'No plan: fix the machine first',
  hours: 'No plan: fix the hours first',
  plan: 'No plan yet',
};

export function problemTitle({ code }: NightProblem): string {
  return TITLE[code];
}

/** A form of the night page, and what is done in it. */
type WayOut = { readonly form: 'machine' | 'hours' | 'event' | 'forecast'; readonly label: string };

const FIX_MACHINE: WayOut = { form: 'machine', label: 'Fix the machine' };
const FIX_EVENT: WayOut = { form: 'event', label: 'Change the event' };
const FIX_HOURS: WayOut = { form: 'hours', label: 'Fix the hours' };
const ADD_JETS: WayOut = { form: 'machine', label: 'Add your jets' };

const OUT_OF_PLAN: Readonly<Record<PlanProblem['code'], readonly [WayOut, ...WayOut[]]>> = {
  'no-runs': [{ form: 'event', label: 'Add runs' }],
  'no-hours': [
    { form: 'forecast', label: 'Get the forecast' },
    { form: 'hours', label: 'Type hours by hand' },
  ],
  'empty-box': [ADD_JETS],
  'too-few-jets': [ADD_JETS],
  'setting-does-not-fit': [FIX_MACHINE],
  'hours-do-not-cover-any-run': [FIX_EVENT, FIX_HOURS],
  'run-ends-before-it-starts': [FIX_EVENT],
  'too-many-runs': [FIX_EVENT],
  'too-much-at-once': [{ form: 'machine', label: 'Change the box' }, FIX_EVENT],
};

/** Where what is missing is given: the likeliest first. */
export function waysOut(problem: NightProblem): readonly [WayOut, ...WayOut[]] {
  if (problem.code === 'plan') return OUT_OF_PLAN[problem.problem.code];
  return problem.code === 'machine' ? [FIX_MACHINE] : [FIX_HOURS];
}

/** One sentence for each kind of problem: a pasted column can be wrong in every line for one reason. */
export function problemSentences(problem: NightProblem, voice: ProblemVoice): readonly string[] {
  if (problem.code === 'plan') return [planProblemSentence(problem.problem, voice)];
  const kinds = problem.problems.map(kindOf);
  return problem.problems.flatMap((each, i) => {
    const same = kinds.filter((kind) => kind === kinds[i]).length;
    return kinds.indexOf(kindOf(each)) === i ? [`${sentenceOf(each, voice)}${moreText(same - 1)}`] : [];
  });
}

function kindOf({ path, reason }: ContractProblem): string {
  return reason.code === 'field' ? `${pathText(path)} ${reason.message}` : reason.code;
}

function sentenceOf({ path, reason }: ContractProblem, voice: ProblemVoice): string {
  return reason.code === 'field'
    ? `${pathText(path)}: ${reason.message}`
    : contractProblemSentence(reason, voice);
}

function moreText(count: number): string {
  if (count === 0) return '';
  return ` (The same in ${count} more place${count === 1 ? '' : 's'}.)`;
}
