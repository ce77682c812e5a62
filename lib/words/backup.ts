import type { BackupProblem } from '@/lib/store/backup-file';
import type { TableName } from '@/lib/store/records';
import { formatNumber } from '@/lib/units/format';

const NOTHING_CHANGED = 'Nothing was changed.';

/** Why a file cannot be taken in, and what to do about it. */
export function backupProblemSentence(problem: BackupProblem): string {
  switch (problem.code) {
    case 'too-large':
      return `The file is larger than ${formatNumber(problem.limit)} characters, so it is no backup of this app. Choose one that was saved here. ${NOTHING_CHANGED}`;
    case 'not-json':
      return `This is no backup file. Choose one that was saved here; its name ends in .json. ${NOTHING_CHANGED}`;
    case 'foreign':
      return `This file was written by another program, not by Heavy Air. Choose one that was saved here. ${NOTHING_CHANGED}`;
    case 'newer-format':
      return `This file is of a newer version of Heavy Air (format ${problem.format}; this one reads up to ${problem.newest}). Reload the page to get that version, then try again. ${NOTHING_CHANGED}`;
    case 'damaged':
      return `${DAMAGE[problem.what]} Take another copy, if there is one. ${NOTHING_CHANGED}`;
    case 'bad-record':
      return `The file is whole, but a record in it cannot be used (${TABLES[tableName(problem.table)] ?? problem.table}, ${problem.id}: ${problem.issues[0]?.path ?? ''} ${problem.issues[0]?.message ?? ''}). Take another copy, if there is one. ${NOTHING_CHANGED}`;
  }
}

const DAMAGE: Readonly<Record<Extract<BackupProblem, { code: 'damaged' }>['what'], string>> = {
  checksum: 'The file is damaged: it is not as it was written.',
  shape: 'The file is damaged: a part of it is missing.',
  counts: 'The file is damaged: it does not hold as many records as it says.',
};

const TABLES: Readonly<Record<TableName, string>> = {
  machines: 'machines',
  boxes: 'boxes',
  events: 'events',
  log: 'runs in the log',
  forecasts: 'kept forecasts',
  comparisons: 'comparisons',
  preferences: 'settings',
};

// A damaged file may name a table nobody knows; then its own word is shown.
const tableName = (table: string): TableName => table as TableName;

export function tableText(table: TableName): string {
  return TABLES[table];
}

/** Before a merge with a file that two browsers of one name have had their hands in. */
export const OF_COPY =
  'The file has changes that it says were made in this browser, and that are not here. Either this browser’s profile was copied, or what is here was put back to an older state. So nothing is taken for known: where both differ, one stands and the other is set aside.';
