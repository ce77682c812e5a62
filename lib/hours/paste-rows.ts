import { fail, ok, type Result } from '@/lib/result/result';
import type { TableLine } from '@/lib/table/read-table';
import type { Instant } from '@/lib/time/instant';
import type { PressureUnit, TemperatureUnit } from '@/lib/units/choice';
import type { Kelvin, Pascal, Ratio } from '@/lib/units/quantity';
import { cellUnit, dewPointCell, humidityCell, pressureCell, temperatureCell } from './paste-cells';
import type { PastedColumn } from './paste-columns';
import type { LineTime } from './paste-times';
import type {
  ColumnMeaning,
  DroppedCell,
  HumidityScale,
  PastedRow,
  PasteProblem,
  SkippedLine,
} from './pasted';

export type PasteReading = {
  readonly data: readonly TableLine[];
  readonly columns: readonly PastedColumn[];
  /** One for each line of data. */
  readonly times: readonly LineTime[];
  readonly temperatureUnit: TemperatureUnit;
  readonly pressureUnit: { readonly unit: PressureUnit; readonly bySize: boolean };
  readonly humidityScale: HumidityScale;
};

export type Rows = {
  readonly rows: readonly PastedRow[];
  readonly skipped: readonly SkippedLine[];
  readonly dropped: readonly DroppedCell[];
};

/** Dew points are rounded apart from temperatures; more than this above is a slip [K]. */
const DEW_POINT_SLACK_K = 0.5;

type Extras = {
  readonly relativeHumidity: Ratio | null;
  readonly dewPoint: Kelvin | null;
  readonly pressure: Pascal | null;
  readonly dropped: readonly DroppedCell[];
};

type Pick = (meaning: ColumnMeaning) => { readonly cell: string; readonly column: PastedColumn } | null;

function pickFrom(line: TableLine, columns: readonly PastedColumn[]): Pick {
  return (meaning) => {
    const column = columns.find((candidate) => candidate.meaning === meaning);
    return column === undefined ? null : { cell: line.cells[column.index] ?? '', column };
  };
}

function readExtras(line: TableLine, temperature: Kelvin, reading: PasteReading): Extras {
  const pick = pickFrom(line, reading.columns);
  const dropped: DroppedCell[] = [];
  const keep = <Q>(
    picked: ReturnType<Pick>,
    read: (cell: string, column: PastedColumn) => Result<Q | null, DroppedCell['reason']>,
  ): Q | null => {
    if (picked === null) return null;
    const result = read(picked.cell, picked.column);
    if (result.ok) return result.value;
    dropped.push({ line: line.line, text: picked.cell, reason: result.reason });
    return null;
  };
  const dew = keep(pick('dew-point'), (cell, column) => {
    const read = dewPointCell(cell, column, reading.temperatureUnit);
    return read.ok && read.value !== null && read.value > temperature + DEW_POINT_SLACK_K
      ? fail('dew-point-above-temperature')
      : read;
  });
  return {
    relativeHumidity: keep(pick('humidity'), (cell) => humidityCell(cell, reading.humidityScale)),
    dewPoint: dew,
    pressure: keep(pick('pressure'), (cell, column) => pressureCell(cell, column, reading.pressureUnit.unit)),
    dropped,
  };
}

/** Header and cells must not name different units. */
function unitConflict({ data, columns }: PasteReading): PasteProblem | null {
  const same = (unit: string): string => unit.toLowerCase().replace(/^deg|ahrenheit$|elsius$/g, '');
  for (const { index, unit, meaning } of columns) {
    if (unit === null || meaning === 'ignored' || meaning === 'time' || meaning === 'date') continue;
    const other = data
      .map(({ cells }) => cellUnit(cells[index] ?? ''))
      .find((own) => own !== '' && same(own) !== same(unit));
    if (other !== undefined) return { code: 'unit-conflict', column: index, header: unit, cell: other };
  }
  return null;
}

type LineRead = {
  readonly row: Omit<PastedRow, 'doubledHour'>;
  /** The other moment of a clock time that the night shows twice. */
  readonly later: Instant | null;
  readonly dropped: readonly DroppedCell[];
};

function readLine(
  line: TableLine,
  time: LineTime | undefined,
  reading: PasteReading,
): LineRead | SkippedLine | null {
  if (
    line.cells.every((cell) => cell === '') &&
    reading.columns.some(({ meaning }) => meaning === 'time' || meaning === 'date')
  )
    return null;
  const skip = (reason: SkippedLine['reason']): SkippedLine => ({
    line: line.line,
    text: line.cells.join(' ').trim(),
    reason,
  });
  const picked = pickFrom(line, reading.columns)('temperature');
  const temperature =
    picked === null
      ? fail('no-temperature' as const)
      : temperatureCell(picked.cell, picked.column, reading.temperatureUnit);
  if (!temperature.ok) return skip(temperature.reason);
  if (time === undefined) return skip('no-time');
  if ('reason' in time) return skip(time.reason);
  const { dropped, ...extras } = readExtras(line, temperature.value, reading);
  return {
    row: { line: line.line, at: time.at, temperature: temperature.value, ...extras },
    later: time.later,
    dropped,
  };
}

/** All lines in order of time, with what was left out and why. */
export function readRows(reading: PasteReading): Result<Rows, PasteProblem> {
  const conflict = unitConflict(reading);
  if (conflict !== null) return fail(conflict);
  const reads: LineRead[] = [];
  const skipped: SkippedLine[] = [];
  const taken = new Set<Instant>();
  for (const [i, line] of reading.data.entries()) {
    const read = readLine(line, reading.times[i], reading);
    if (read === null) continue;
    if ('reason' in read) skipped.push(read);
    else if (taken.has(read.row.at))
      skipped.push({ line: line.line, text: line.cells.join(' ').trim(), reason: 'same-time-as-before' });
    else {
      taken.add(read.row.at);
      reads.push(read);
    }
  }
  if (reads.length === 0) return fail({ code: 'no-hours', skipped });
  const rows = reads.map(({ row, later }) => ({ ...row, doubledHour: later !== null && !taken.has(later) }));
  return ok({
    rows: rows.sort((a, b) => a.at - b.at),
    skipped,
    dropped: reads.flatMap(({ dropped }) => dropped),
  });
}
