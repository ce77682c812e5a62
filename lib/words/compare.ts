import type { CompareProblem } from '@/lib/compare/compare';
import type { UnitChoice } from '@/lib/units/choice';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { fairProblemSentence } from '@/lib/words/fair';
import { hardwareProblemSentence } from '@/lib/words/hardware';
import { jetsText } from '@/lib/words/settings';

/** Why there is no comparison yet, and what to do about it. */
export function compareProblemSentences(problem: CompareProblem, units: UnitChoice): readonly string[] {
  const voice = { zone: 'UTC', units };
  switch (problem.code) {
    case 'fair':
      return [fairProblemSentence(problem.problem)];
    case 'hardware':
      return [hardwareProblemSentence(problem.problem)];
    case 'machine':
      return problem.problems.map(({ reason }) => `The machine: ${contractProblemSentence(reason, voice)}`);
    case 'pull':
      return problem.problems.map(
        ({ reason }) =>
          `The run on ${jetsText(problem.pull.setting.mains)} (${problem.pull.side}): ${contractProblemSentence(reason, voice)}`,
      );
  }
}
