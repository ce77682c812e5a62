import type { EntryProblem } from '@/lib/units/entry-number';

/** Why a typed text is not the number it should be. `example` is one that would be, such as "-12.5". */
export function entryProblemSentence(problem: EntryProblem, example: string): string {
  switch (problem.code) {
    case 'empty':
      return `Nothing typed yet. For example: ${example}.`;
    case 'not-a-number':
      return `"${problem.text}" is not a number. For example: ${example}.`;
    case 'too-large':
      return `"${problem.text}" is far too large. For example: ${example}.`;
    case 'ambiguous-mark':
      return `"${problem.text}" could be ${problem.decimal} or ${problem.thousands}. Type it without the mark, or with its unit.`;
    case 'unknown-unit':
      return `The unit "${problem.unit}" does not fit here. For example: ${example}.`;
  }
}
