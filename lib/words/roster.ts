import { pathText } from '@/lib/contract/problem';
import type { RosterLineProblem, RosterTableProblem } from '@/lib/contract/roster-problem';
import { formatNumber } from '@/lib/units/format';
import { boxProblemWords } from './box-text';
import { contractProblemSentence } from './contract-problems';
import { entryProblemSentence } from './entry-problems';
import { listing } from './listing';
import type { Voice } from './voice';

/** Why a pasted text is no table of racers, and what to do next. */
export function rosterTableSentence(problem: RosterTableProblem): string {
  switch (problem.code) {
    case 'empty':
      return 'There is no racer in this. Paste lines with a name, mains, box and temperature.';
    case 'too-large':
    case 'too-many-lines':
      return `This is more than a roster can be (${formatNumber(problem.limit)} ${problem.code === 'too-large' ? 'characters' : 'lines'}). Paste it in parts.`;
    case 'quotes-broken':
      return 'A quotation mark was opened and never closed. Copy the cells from the spreadsheet again.';
    case 'columns-missing':
      return `The first line names no column ${listing(problem.columns.map((column) => `“${column}”`))}. Add it, or leave the first line out and keep the order name, mains, box, temperature, elevation, class.`;
    case 'column-twice':
      return `Two columns are called ${problem.column}. Keep one of them.`;
  }
}

/** Asked before somebody joins who may be there already; a roster of forty is not listed whole. */
export function repeatedRacersSentence(names: readonly string[]): string {
  const first = names.slice(0, MOST_NAMED);
  const rest = names.length - first.length;
  const listed = listing(rest > 0 ? [...first, `${rest} more`] : first);
  return names.length === 1
    ? `Is this one here already? ${listed}`
    : `Are these ${names.length} here already? ${listed}`;
}

const MOST_NAMED = 5;

const EXAMPLES = { temperature: '18 F', elevation: '1320 ft', 'station pressure': '29.1 inHg' } as const;
const CELLS = {
  mains: 'Mains',
  box: 'Box',
  temperature: 'Temperature',
  elevation: 'Elevation',
  'station pressure': 'Station pressure',
} as const;

/** Why one line is no racer, and how to write it. */
export function rosterLineSentence(problem: RosterLineProblem, voice: Voice): string {
  switch (problem.code) {
    case 'name-missing':
      return 'The name is missing, or nothing in it can be seen. Add it.';
    case 'bib':
      return `Bib “${problem.text}” is too long. Write at most 8 characters.`;
    case 'details':
      return 'The cell under “details” was changed. Empty it, and the machine gets working defaults; or take the file as it was saved.';
    case 'too-many-cells':
      return 'There are more cells than columns. Part the jets of a box by spaces, or paste straight from a spreadsheet.';
    case 'mains':
    case 'box':
      return `${CELLS[problem.code]}: ${boxProblemWords(problem.problem)}`;
    case 'marking':
      return `Marking “${problem.text}” is not known. Write flow or bore.`;
    case 'machine': {
      const [first] = problem.problems;
      if (first === undefined) return 'This is no machine. Check the mains and the box.';
      return first.reason.code === 'field'
        ? `${pathText(first.path)}: ${first.reason.message}`
        : contractProblemSentence(first.reason, voice);
    }
    default:
      return `${CELLS[problem.code]}: ${entryProblemSentence(problem.problem, EXAMPLES[problem.code])}`;
  }
}
