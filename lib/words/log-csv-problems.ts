import type { LogCsvProblem } from '@/lib/contract/log-csv-problem';
import type { UnitChoice } from '@/lib/units/choice';
import { formatNumber } from '@/lib/units/format';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { counted, listing } from '@/lib/words/listing';

/** Why a file was not taken in, and what to change in it. */
export function csvProblemSentence(problem: LogCsvProblem, units: UnitChoice): string {
  switch (problem.code) {
    case 'too-large':
      return `The file is larger than ${formatNumber(problem.limit)} characters. Split it.`;
    case 'too-many-lines':
      return `The file has more than ${formatNumber(problem.limit)} runs. Split it.`;
    case 'empty':
      return 'The file holds no run. Write a head and one line for each run.';
    case 'columns-missing':
      return `The head lacks ${listing(problem.columns)}. Save the log once to see how the columns are called.`;
    case 'column-twice':
      return `The column ${problem.column} is there twice. Keep one.`;
    case 'quotes-broken':
      return 'A quotation mark is opened and never closed, so where a line ends cannot be told. Save the table again from its spreadsheet.';
    case 'too-many-cells':
      return `Line ${problem.line} has more cells than the head has columns. Put texts with commas in quotation marks.`;
    case 'unknown-machine':
      return `Line ${problem.line}: there is no machine called “${problem.machine}” here. Add it first, or correct its name.`;
    case 'which-machine':
      return `Line ${problem.line}: two machines are called “${problem.machine}”. Rename one, or give machine_id.`;
    case 'id-twice':
      return `Line ${problem.line}: the id ${problem.id} is there twice. Empty one of the two cells.`;
    case 'not-a-number':
      return `Line ${problem.line}, ${problem.column}: “${problem.text}” is not a number. Write one, or leave the cell empty.`;
    case 'cylinder-verdict-unknown':
      return `Line ${problem.line}, verdict_by_cylinder: “${problem.text}” is no verdict. Write lean, right, rich or none for each cylinder, as in right/lean/none.`;
    case 'cylinder-verdicts-do-not-fit':
      return `Line ${problem.line}: ${counted(problem.verdicts, 'verdict')} for ${counted(problem.mains, 'main jet')}. Give one verdict and one jet for each cylinder, as in 410/400/410.`;
    case 'cylinder-verdicts-disagree':
      return `Line ${problem.line}: the leanest cylinder is ${problem.leanest}, the verdict of the run says something else. Empty the cell that is wrong.`;
    case 'bad-value':
      return `Line ${problem.line}, ${problem.column}: ${contractProblemSentence(problem.reason, { zone: 'UTC', units })}`;
  }
}
