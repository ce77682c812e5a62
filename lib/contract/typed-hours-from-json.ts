import type { FilledSeries } from '@/lib/hours/gaps';
import { type TypedPoint, type TypedProblem, typedSeries } from '@/lib/hours/typed';
import { fail, ok, type Result } from '@/lib/result/result';
import { celsiusToKelvin } from '@/lib/units/convert';
import { type Metre, metre, ratio } from '@/lib/units/quantity';
import type { HourJson } from './event';
import { instantFromJson } from './event-from-json';
import { type MeasuredPressure, pressureGiven, pressureSaid } from './pressure';
import type { ContractProblem, Path } from './problem';
import { seriesFromJson } from './series-from-json';
import { skyFromJson } from './sky';

/** Hours as a person typed them, with what was asked once for all of them. */
export type TypedHoursJson = {
  readonly hours: readonly HourJson[];
  readonly pressure: MeasuredPressure | { readonly kind: 'standard' };
  readonly relativeHumidity: number;
  /** All its pressures, and their kind, were confirmed by a person. */
  readonly pressureConfirmed?: boolean | undefined;
};

/** Typed hours with the hours between them filled in, or every reason why they cannot be used. */
export function typedSeriesFromJson(
  typed: TypedHoursJson,
  elevationM: number,
  path: Path = ['hours'],
): Result<FilledSeries, readonly ContractProblem[]> {
  const checked = seriesFromJson(typed.hours, elevationM, { ...typed, path });
  if (!checked.ok) return checked;
  const elevation = metre(elevationM);
  const filled = typedSeries({
    points: typed.hours.map((hour) => pointFromJson(hour, elevation)),
    elevation,
    pressure: pressureGiven(typed.pressure, elevation),
    relativeHumidity: ratio(typed.relativeHumidity),
    stepMinutes: 60,
  });
  if (!filled.ok) return fail([{ path, reason: reasonOf(filled.reason) }]);
  return ok(withMarks(filled.value, typed));
}

/**
 * What was said of an hour beside its air is marked on it: who made it, its sky, whether its pressure was stood by. An
 * hour between two says of its maker what both say.
 */
function withMarks({ series, gaps }: FilledSeries, typed: TypedHoursJson): FilledSeries {
  const said = typed.hours
    .map((hour) => ({ ...hour, ...skyFromJson(hour), at: instantFromJson(hour.time) }))
    .sort((a, b) => a.at - b.at);
  const hours = series.hours.map((hour) => {
    const before = said.findLast(({ at }) => at <= hour.at);
    const after = said.find(({ at }) => at >= hour.at);
    const own = before === after ? before : undefined;
    const maker = before?.rawModel === after?.rawModel ? before?.rawModel : undefined;
    const isStoodBy = typed.pressureConfirmed === true || own?.pressureConfirmed === true;
    return {
      ...hour,
      ...(maker === undefined ? {} : { rawModel: maker }),
      ...(own?.sky === undefined ? {} : { sky: own.sky }),
      ...(isStoodBy ? { pressureConfirmed: true } : {}),
    };
  });
  return { series: { ...series, hours }, gaps };
}

function pointFromJson(hour: HourJson, elevation: Metre): TypedPoint {
  const own = pressureSaid(hour);
  return {
    at: instantFromJson(hour.time),
    temperature: celsiusToKelvin(hour.temperatureC),
    relativeHumidity: hour.relativeHumidity === undefined ? null : ratio(hour.relativeHumidity),
    dewPoint: hour.dewPointC === undefined ? null : celsiusToKelvin(hour.dewPointC),
    pressure: own === null ? null : pressureGiven(own, elevation),
  };
}

function reasonOf(problem: TypedProblem): ContractProblem['reason'] {
  switch (problem.code) {
    case 'no-points':
      return { code: 'no-hours' };
    case 'same-time':
      return { code: 'same-hour-twice', at: problem.at };
    case 'not-air':
      return problem.problem;
  }
}
