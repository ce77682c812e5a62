import { type ContractProblem, pathText } from '@/lib/contract/problem';
import type { NightProblem } from '@/lib/night/night';
import { contractProblemSentence } from './contract-problems';
import { planProblemSentence } from './plan-problems';
import type { Voice } from './voice';

export type ProblemVoice = Voice & { readonly runNames: readonly string[] };

const TITLE: Readonly<Record<NightProblem['code'], string>> = {
  machine: 'The machine needs mending before there is a plan.',
  hours: 'The hours need mending before there is a plan.',
  plan: 'There is no plan yet.',
};

export function problemTitle({ code }: NightProblem): string {
  return TITLE[code];
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
