import type { TableLine } from '@/lib/table/read-table';
import { humidityScaleOf } from './paste-cells';
import type { PastedColumns } from './paste-columns';
import { dayOrderOf, type Moment, readMoment } from './paste-moment';
import { isMissing, type PastedTable } from './paste-table';
import { needsHalfDay } from './paste-times';
import type { ColumnMeaning, PasteOptions, PasteQuestion } from './pasted';

/** The cells of the first column with this meaning, one for each line of data; empty where there is none. */
export type CellsOf = (meaning: ColumnMeaning) => readonly string[];

export type LineMoment = Moment | null | 'missing';

export function cellsOf(data: readonly TableLine[], { columns }: PastedColumns): CellsOf {
  return (meaning) => {
    const column = columns.find((candidate) => candidate.meaning === meaning);
    return column === undefined ? [] : data.map(({ cells }) => cells[column.index] ?? '');
  };
}

/** Date from the one column, clock from the other, or both from either; null where the text has no times. */
export function pastedMoments(cells: CellsOf): readonly LineMoment[] | null {
  const [times, dates] = [cells('time'), cells('date')];
  if (times.length === 0 && dates.length === 0) return null;
  return (times.length > 0 ? times : dates).map((cell, i) => {
    if (isMissing(cell)) return 'missing';
    const time = readMoment(cell, true);
    const date = times.length > 0 ? (dates[i] ?? '') : '';
    if (time === null || isMissing(date)) return time;
    const day = readMoment(date, false);
    return day === null ? null : { ...time, date: time.date ?? day.date };
  });
}

export function knownMoments(moments: readonly LineMoment[]): readonly (Moment | null)[] {
  return moments.filter((moment) => moment !== 'missing');
}

/** What must be asked before the hours can be read; one thing at a time where the rest hangs on it. */
export function questionsOf(
  table: PastedTable,
  columns: PastedColumns,
  data: readonly TableLine[],
  options: PasteOptions,
): readonly PasteQuestion[] {
  if (table.question !== null) return [table.question];
  if (columns.question !== null) return [columns.question];
  const cells = cellsOf(data, columns);
  const moments = pastedMoments(cells);
  const text = [...cells('date'), ...cells('time')].find((cell) => !isMissing(cell)) ?? '';
  const asked: PasteQuestion[] = [];
  if (moments === null) {
    if (options.startClock === undefined && cells('temperature').length > 0) asked.push({ code: 'no-times' });
  } else {
    if (options.dayOrder === undefined && dayOrderOf(knownMoments(moments)) === 'open')
      asked.push({ code: 'day-or-month', text });
    if (options.clock === undefined && needsHalfDay(moments)) asked.push({ code: 'am-or-pm', text });
  }
  if (options.humidityScale === undefined && humidityScaleOf(cells('humidity')) === 'open')
    asked.push({ code: 'humidity-scale' });
  return asked;
}
