import { pathText } from '@/lib/contract/problem';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { planProblemSentence } from '@/lib/words/plan-problems';
import type { Voice } from '@/lib/words/voice';
import type { NightProblem } from './night';

export type ProblemVoice = Voice & { readonly runNames: readonly string[] };

const TITLE: Readonly<Record<NightProblem['code'], string>> = {
  machine: 'The machine needs mending before there is a plan.',
  hours: 'The hours need mending before there is a plan.',
  plan: 'There is no plan yet.',
};

export function problemTitle({ code }: NightProblem): string {
  return TITLE[code];
}

/** Enough to act on; a pasted column can be wrong in every line. */
const MOST = 5;

export function problemSentences(problem: NightProblem, voice: ProblemVoice): readonly string[] {
  if (problem.code === 'plan') return [planProblemSentence(problem.problem, voice)];
  const sentences = problem.problems.map(({ path, reason }) =>
    reason.code === 'field' ? `${pathText(path)}: ${reason.message}` : contractProblemSentence(reason, voice),
  );
  const different = [...new Set(sentences)];
  const more = different.length - MOST;
  return more > 0 ? [...different.slice(0, MOST), `And ${more} more of this kind.`] : different;
}
