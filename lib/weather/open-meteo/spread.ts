import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { type KelvinDifference, kelvinDifference } from '@/lib/units/quantity';
import type { AnswerProblem } from '@/lib/weather/problem';
import { readColumn, readTimes } from './columns';
import type { OpenMeteoEnsemble } from './schema';

/** Standard deviation of an ensemble's temperature, by instant. */
export type TemperatureSpread = ReadonlyMap<Instant, KelvinDifference>;

const SPREAD = 'temperature_2m_spread';
/** Control and numbered members; a mean or another model's column is neither. */
const MEMBER = /^temperature_2m(_member\d+)?$/;
/** A standard deviation from fewer says nothing. */
const FEWEST_MEMBERS = 5;
/** Wider than this is no ensemble's temperature spread but something else [K]. */
const WIDEST_K = 30;

/** The spread an ensemble answer states, or the sample standard deviation of its members. */
export function adaptSpread(wire: OpenMeteoEnsemble): Result<TemperatureSpread, AnswerProblem> {
  const times = readTimes(wire.hourly.time, wire.utc_offset_seconds);
  if (!times.ok) return times;
  const length = times.value.length;
  const stated = wire.hourly[SPREAD] !== undefined;
  const names = Object.keys(wire.hourly).filter((name) => (stated ? name === SPREAD : MEMBER.test(name)));
  if (!stated && names.length < FEWEST_MEMBERS)
    return fail({ code: 'unexpected-shape', field: `hourly.${SPREAD}` });
  const columns: (readonly (number | null)[])[] = [];
  for (const name of names) {
    const values = wire.hourly[name];
    const column = readColumn(
      name,
      // The schema's catch-all cannot tell its own named key apart: `time` is filtered out by name above.
      {
        values: Array.isArray(values) ? (values as readonly (number | null)[]) : undefined,
        unit: wire.hourly_units[name],
      },
      { units: ['°C', 'K'], length },
    );
    if (!column.ok) return column;
    columns.push(column.value);
  }
  const spread = new Map<Instant, KelvinDifference>();
  times.value.forEach((at, row) => {
    const values = columns.map((column) => column[row] ?? null).filter((value) => value !== null);
    const sd = stated ? (values[0] ?? null) : deviation(values);
    if (sd !== null && sd >= 0 && sd <= WIDEST_K) spread.set(at, kelvinDifference(sd));
  });
  return ok(spread);
}

/** Sample standard deviation: sqrt(sum of (x - mean)² / (n - 1)). */
function deviation(values: readonly number[]): number | null {
  if (values.length < FEWEST_MEMBERS) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1));
}
