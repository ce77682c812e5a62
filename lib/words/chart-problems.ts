import type { ChartProblem } from '@/lib/store/read-chart';

const WHAT = { temperature: 'a temperature', elevation: 'an elevation', main: 'a main jet' } as const;

export function chartProblemSentence(problem: ChartProblem): string {
  switch (problem.code) {
    case 'empty':
      return 'There is no cell yet. Type at least one temperature, one elevation and one main.';
    case 'too-many-cells':
      return `More than ${problem.limit} cells. Take every second line.`;
    case 'bad-cell':
      return `Line ${problem.line}: “${problem.text}” is not ${WHAT[problem.what]}. Check what stands there.`;
    case 'ragged':
      return `Line ${problem.line} has ${problem.cells} cells where ${problem.wanted} are expected. Make the lines alike.`;
  }
}
