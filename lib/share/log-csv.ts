import { toCell } from '@/lib/table/cell';
import { writeTable } from '@/lib/table/write-table';
import { LOG_COLUMNS, type LogRow } from './log-csv-columns';

/** The run log as a table in text: RFC 4180, with a head, UTF-8 marked for spreadsheets, safe to open in one. */
export function writeLogCsv(rows: readonly LogRow[]): string {
  const data = rows.map((row) => LOG_COLUMNS.map(({ cell }) => safeCell(cell(row))));
  const fields = LOG_COLUMNS.map(({ name }) => name);
  return `\uFEFF${writeTable(fields, data)}`;
}

/** Numbers stand as they are, for a minus before a number is no formula; texts are made safe. */
function safeCell(cell: string | number | null | undefined): string | number {
  return typeof cell === 'string' ? toCell(cell) : (cell ?? '');
}
