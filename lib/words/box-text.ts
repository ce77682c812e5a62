import type { BoxTextProblem } from '@/lib/carb/box-text';

/** Why a box cannot be read as it was typed, and how to write it. */
export function boxProblemWords(problem: BoxTextProblem): string {
  switch (problem.code) {
    case 'empty':
      return 'Type the jets you own, such as 400x3 410x3 420.';
    case 'not-a-jet':
      return `“${problem.text}” is not a jet. Write the size, then x and how many: 400x3.`;
    case 'count-too-large':
      return `${problem.count} pieces of size ${problem.size}? Write the size first: ${problem.count}x${problem.size}.`;
  }
}
