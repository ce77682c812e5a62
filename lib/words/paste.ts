import type { DroppedCell, PasteProblem, SkippedLine } from '@/lib/hours/pasted';
import { clockProblemSentence } from './clock-problems';

const SKIPPED: Readonly<Record<SkippedLine['reason'], string>> = {
  'above-header': 'stands above the headings',
  'no-temperature': 'has no temperature',
  'temperature-not-a-number': 'has a temperature that is no number',
  'temperature-out-of-range': 'has a temperature no air on earth has',
  'no-time': 'has no time',
  'time-not-readable': 'has a time that cannot be read',
  'missing-hour': 'has a time that does not exist: the clocks jump over it',
  'same-time-as-before': 'has the same time as a line before it',
};

/** Why a pasted line gave no hour. */
export function skippedLineSentence({ line, text, reason }: SkippedLine): string {
  return `Line ${line} (“${shortened(text)}”) ${SKIPPED[reason]}.`;
}

const DROPPED: Readonly<Record<DroppedCell['reason'], string>> = {
  'humidity-not-a-number': 'the humidity is no number',
  'humidity-out-of-range': 'the humidity is not between 0 and 100 %',
  'dew-point-not-a-number': 'the dew point is no number',
  'dew-point-out-of-range': 'the dew point is out of range',
  'dew-point-above-temperature': 'the dew point is above the temperature',
  'pressure-not-a-number': 'the pressure is no number',
  'pressure-out-of-range': 'the pressure is out of range',
};

/** Why one cell was left out while the rest of its line counts. */
export function droppedCellSentence({ line, text, reason }: DroppedCell): string {
  return `Line ${line}: ${DROPPED[reason]} (“${shortened(text)}”); the rest of the line counts.`;
}

/** Why pasted text gives no hours at all, and what to do; questions are asked by the form itself. */
export function pasteProblemSentence(problem: Exclude<PasteProblem, { code: 'ask' }>): string {
  switch (problem.code) {
    case 'empty':
      return 'Paste a column of temperatures, or a table with times.';
    case 'too-long':
      return `That is more than ${problem.limit} characters. Paste one night at a time.`;
    case 'too-many-lines':
      return `That is more than ${problem.limit} lines. Paste one night at a time.`;
    case 'too-many-columns':
      return `That is more than ${problem.limit} columns. Paste the times and the air only.`;
    case 'unknown-zone':
    case 'not-a-date':
    case 'not-a-clock':
      return clockProblemSentence(problem);
    case 'no-temperature-column':
      return 'No column looks like temperatures. Paste at least the temperatures, one per line.';
    case 'unit-conflict':
      return `The heading says ${problem.header}, but a cell says ${problem.cell}. Make them the same and paste again.`;
    case 'times-run-backwards':
      return 'The times run backwards. Sort the table with the earliest hour first and paste again.';
    case 'no-hours':
      return 'No line gave an hour. Paste times and temperatures, or temperatures alone.';
  }
}

const LONGEST_QUOTE = 40;

const shortened = (text: string): string =>
  text.length <= LONGEST_QUOTE
    ? text.replaceAll('\t', ' ')
    : `${text.slice(0, LONGEST_QUOTE).replaceAll('\t', ' ')}…`;
