import { cellUnit } from './paste-cells';
import type { PastedColumn, PastedColumns } from './paste-columns';
import { dayOrderOf } from './paste-moment';
import { knownMoments, type LineMoment } from './paste-questions';
import type { PasteReading } from './paste-rows';
import type { PastedTable } from './paste-table';
import type { DayOrder, PasteOptions, Understood, UnderstoodColumn } from './pasted';

type Unit = Pick<UnderstoodColumn, 'unit' | 'unitFrom'>;

const assumedUnit = (column: PastedColumn, reading: PasteReading): Unit => {
  switch (column.meaning) {
    case 'temperature':
    case 'dew-point':
      return { unit: reading.temperatureUnit, unitFrom: 'assumed' };
    case 'pressure':
      return { unit: reading.pressureUnit.unit, unitFrom: reading.pressureUnit.bySize ? 'size' : 'assumed' };
    case 'humidity':
      return { unit: reading.humidityScale, unitFrom: 'size' };
    default:
      return { unit: null, unitFrom: null };
  }
};

function unitOf(column: PastedColumn, reading: PasteReading): Unit {
  const assumed = assumedUnit(column, reading);
  if (assumed.unitFrom === null) return assumed;
  const written = reading.data
    .map(({ cells }) => cellUnit(cells[column.index] ?? ''))
    .find((unit) => unit !== '');
  if (written !== undefined) return { unit: written, unitFrom: 'cell' };
  return column.unit === null ? assumed : { unit: column.unit, unitFrom: 'header' };
}

export function dayOrderFor(moments: readonly LineMoment[] | null, options: PasteOptions): DayOrder | null {
  const seen = moments === null ? null : dayOrderOf(knownMoments(moments));
  return seen === 'open' ? (options.dayOrder ?? null) : seen;
}

function timesFrom(moments: readonly LineMoment[] | null): Understood['times'] {
  const known = moments === null ? [] : knownMoments(moments).filter((moment) => moment !== null);
  if (moments === null) return 'counted-from-start';
  if (known.some((moment) => moment.instant !== null)) return 'with-offset';
  return known.some((moment) => moment.date !== null) ? 'with-date' : 'clock-only';
}

/** How the text was read, for the person to check. */
export function understoodOf(
  table: PastedTable,
  found: PastedColumns,
  {
    reading,
    moments,
    options,
  }: {
    readonly reading: PasteReading;
    readonly moments: readonly LineMoment[] | null;
    readonly options: PasteOptions;
  },
): Understood {
  return {
    separator: table.separator,
    decimal: table.decimal,
    turned: table.turned,
    columns: found.columns.map((column) => ({
      column: column.index,
      header: column.header,
      meaning: column.meaning,
      ...unitOf(column, reading),
    })),
    times: timesFrom(moments),
    dayOrder: dayOrderFor(moments, options),
    pressureKind: found.pressureKind,
  };
}
