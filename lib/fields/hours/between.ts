import { type Point, shapePreservingCurve } from '@/lib/hours/interpolate';
import { LONGEST_BETWEEN_MS } from '@/lib/hours/mix';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { readTemperature } from '@/lib/units/entry';
import { type Kelvin, kelvin } from '@/lib/units/quantity';
import { type HourRow, rowTime } from './hours-draft';

/** What stands at an hour: what was typed, the curve between typed hours, or nothing. */
export type RowValue =
  | { readonly kind: 'typed'; readonly temperature: Kelvin }
  | { readonly kind: 'between'; readonly temperature: Kelvin }
  | { readonly kind: 'unreadable' }
  | { readonly kind: 'none' };

/** The value at each row, with the hours between typed ones filled in by a curve that adds no high or low of its own. */
export function rowValues(rows: readonly HourRow[], units: UnitChoice): readonly RowValue[] {
  const typed = rows.map((row) => readTemperature(row.temperature, units.temperature));
  const points = rows.flatMap((row, i): readonly Point[] => {
    const read = typed[i];
    return read?.ok ? [{ x: rowTime(row), y: read.value }] : [];
  });
  const curve = shapePreservingCurve(points);
  return rows.map((row, i) => {
    const read = typed[i];
    if (read?.ok) return { kind: 'typed', temperature: read.value };
    if (row.temperature.trim() !== '') return { kind: 'unreadable' };
    const at = rowTime(row);
    const value = isBridged(points, at) ? curve(at) : null;
    return value === null ? { kind: 'none' } : { kind: 'between', temperature: kelvin(value) };
  });
}

function isBridged(points: readonly Point[], at: number): boolean {
  const after = points.findIndex(({ x }) => x >= at);
  const [a, b] = [points[after - 1], points[after]];
  return a !== undefined && b !== undefined && b.x - a.x <= LONGEST_BETWEEN_MS;
}

/** Runs that reach beyond the typed hours, or into a stretch too long to fill in. */
export function uncoveredRuns<R extends { readonly start: Instant; readonly end: Instant }>(
  rows: readonly HourRow[],
  runs: readonly R[],
  units: UnitChoice,
): readonly R[] {
  const times = rows
    .filter((row) => readTemperature(row.temperature, units.temperature).ok)
    .map((row) => rowTime(row));
  const covered = (at: number): boolean => {
    const after = times.findIndex((time) => time >= at);
    const [a, b] = [times[after - 1], times[after]];
    return b === at || (a !== undefined && b !== undefined && b - a <= LONGEST_BETWEEN_MS);
  };
  return runs.filter((run) => !covered(run.start) || !covered(run.end));
}
