import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import type { AnswerProblem } from '@/lib/weather/problem';

type Times = readonly number[] | readonly string[];
type Column = readonly (number | null)[];

/**
 * The instants of an answer's rows. Clock times all carry the one offset that is valid now, across a change of the
 * clocks too (open-meteo issue #488), so taking off that same offset gives the right instants.
 */
export function readTimes(times: Times, offsetSeconds: number): Result<readonly Instant[], AnswerProblem> {
  const epochMs = times.map((time) =>
    typeof time === 'number' ? time * 1000 : Date.parse(`${time}Z`) - offsetSeconds * 1000,
  );
  const bad = epochMs.findIndex((ms, i) => !(Math.abs(ms) < 8e15) || ms <= (epochMs[i - 1] ?? -Infinity));
  return bad < 0 ? ok(epochMs.map(instant)) : fail({ code: 'unexpected-shape', field: `hourly.time.${bad}` });
}

/** A column in the wanted unit and as long as the times, or absent; null entries are missing values. */
export function readColumn(
  field: string,
  column: { readonly values: Column | undefined; readonly unit: string | undefined },
  wanted: { readonly units: readonly string[]; readonly length: number },
): Result<Column, AnswerProblem> {
  if (column.values === undefined) return ok(new Array<null>(wanted.length).fill(null));
  if (column.unit === undefined || !wanted.units.includes(column.unit))
    return fail({ code: 'wrong-units', field, unit: column.unit ?? '' });
  if (column.values.length !== wanted.length)
    return fail({ code: 'unexpected-shape', field: `hourly.${field}` });
  return ok(column.values);
}
