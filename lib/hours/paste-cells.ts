import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import type { PressureUnit, TemperatureUnit } from '@/lib/units/choice';
import { readNumber, readPercent, readPressure, readTemperature } from '@/lib/units/entry';
import { takeApart } from '@/lib/units/entry-number';
import { type Kelvin, type Pascal, type Ratio, ratio } from '@/lib/units/quantity';
import type { PastedColumn } from './paste-columns';
import { isMissing } from './paste-table';
import type { DroppedCell, HumidityScale, SkippedLine } from './pasted';

type Dropped = DroppedCell['reason'];
type Skipped = SkippedLine['reason'];

/** The unit written in the cell; empty where there is none. */
export function cellUnit(cell: string): string {
  const entry = takeApart(cell);
  return entry.ok ? entry.value.unit : '';
}

/** The cell with the header's unit written behind it, where it has none of its own. */
function withUnit(cell: string, column: PastedColumn): string {
  return column.unit === null || cellUnit(cell) !== '' ? cell : `${cell} ${column.unit}`;
}

export function temperatureCell(
  cell: string,
  column: PastedColumn,
  unit: TemperatureUnit,
): Result<Kelvin, Skipped> {
  if (isMissing(cell)) return fail('no-temperature');
  const read = readTemperature(withUnit(cell, column), unit);
  if (!read.ok) return fail('temperature-not-a-number');
  return within(read.value, RANGE.temperature) ? read : fail('temperature-out-of-range');
}

export function dewPointCell(
  cell: string,
  column: PastedColumn,
  unit: TemperatureUnit,
): Result<Kelvin | null, Dropped> {
  if (isMissing(cell)) return ok(null);
  const read = readTemperature(withUnit(cell, column), unit);
  if (!read.ok) return fail('dew-point-not-a-number');
  return within(read.value, RANGE.dewPoint) ? read : fail('dew-point-out-of-range');
}

export function humidityCell(cell: string, scale: HumidityScale): Result<Ratio | null, Dropped> {
  if (isMissing(cell)) return ok(null);
  const read = scale === 'ratio' && cellUnit(cell) === '' ? readNumber(cell) : readPercent(cell);
  if (!read.ok) return fail('humidity-not-a-number');
  const value = ratio(read.value);
  return within(value, { lowest: 0, highest: 1 }) ? ok(value) : fail('humidity-out-of-range');
}

/** Numbers without a sign that are all 1 or less are shares, unless only 0 and 1 are there: then a person must say. */
export function humidityScaleOf(cells: readonly string[]): HumidityScale | 'open' {
  const values = cells.flatMap((cell) => {
    const read = isMissing(cell) || cellUnit(cell) === '%' ? null : readPercent(cell);
    return read?.ok ? [read.value * 100] : [];
  });
  if (values.length === 0 || values.some((value) => value > 1)) return 'percent';
  return values.some((value) => value > 0 && value < 1) ? 'ratio' : 'open';
}

const UNITS_BY_SIZE: readonly PressureUnit[] = ['hPa', 'inHg', 'kPa'];

/**
 * The unit of a column of bare pressures: the person's own where the numbers can be pressures in it, else the only
 * one in which they can (29.9, 101.3 and 1013 do not overlap).
 */
export function pressureUnitOf(
  cells: readonly string[],
  assumed: PressureUnit,
): { readonly unit: PressureUnit; readonly bySize: boolean } {
  const bare = cells.filter((cell) => !isMissing(cell) && cellUnit(cell) === '' && takeApart(cell).ok);
  const fits = (unit: PressureUnit): boolean =>
    bare.every((cell) => {
      const read = readPressure(cell, unit);
      return read.ok && within(read.value, RANGE.station);
    });
  const unit = fits(assumed) ? assumed : UNITS_BY_SIZE.find(fits);
  return { unit: unit ?? assumed, bySize: unit !== undefined && unit !== assumed };
}

export function pressureCell(
  cell: string,
  column: PastedColumn,
  unit: PressureUnit,
): Result<Pascal | null, Dropped> {
  if (isMissing(cell)) return ok(null);
  const read = readPressure(withUnit(cell, column), unit);
  if (!read.ok) return fail('pressure-not-a-number');
  return within(read.value, RANGE.station) ? read : fail('pressure-out-of-range');
}
