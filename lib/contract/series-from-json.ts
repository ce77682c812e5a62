import type { Hour, HourSeries } from '@/lib/hours/series';
import { TYPED_SOURCE } from '@/lib/hours/typed';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import { airFromJson } from './air-from-json';
import type { HourJson } from './event';
import { instantFromJson } from './event-from-json';
import { type MeasuredPressure, pressureJson, pressureSaid } from './pressure';
import type { ContractProblem, Path } from './problem';
import { skyFromJson } from './sky';

/** What was said once for all hours that do not say it themselves. */
export type ForAllHours = {
  readonly pressure?: MeasuredPressure | { readonly kind: 'standard' };
  readonly relativeHumidity?: number;
  /** Where the hours sit in what was sent, for the paths of problems. */
  readonly path?: Path;
};

/**
 * Hours as sent or typed, in any order, to a series at the site. An hour with no pressure gets the standard atmosphere
 * at the elevation and is marked so. The same moment twice is refused: which of the two to believe is the person's call.
 */
export function seriesFromJson(
  hours: readonly HourJson[],
  elevationM: number,
  forAll: ForAllHours = {},
): Result<HourSeries, readonly ContractProblem[]> {
  const path = forAll.path ?? ['hours'];
  const read = hours.map((json, index) => hourFromJson(complete(json, elevationM, forAll), [...path, index]));
  const problems = read.flatMap((hour) => (hour.ok ? [] : hour.reason));
  const sorted = read
    .flatMap((hour, index) => (hour.ok ? [{ hour: hour.value, index }] : []))
    .sort((a, b) => a.hour.at - b.hour.at);
  const twice = sorted
    .filter(({ hour }, i) => sorted[i - 1]?.hour.at === hour.at)
    .map(({ hour, index }) => sameHour(hour.at, [...path, index, 'time']));
  if (problems.length + twice.length > 0) return fail([...problems, ...twice]);
  return ok({ hours: sorted.map(({ hour }) => hour), elevation: metre(elevationM), source: TYPED_SOURCE });
}

function sameHour(at: Instant, path: Path): ContractProblem {
  return { path, reason: { code: 'same-hour-twice', at } };
}

type CompleteHour = HourJson & { readonly elevationM: number };

function complete(json: HourJson, elevationM: number, forAll: ForAllHours): CompleteHour {
  const ownHumidity = json.relativeHumidity ?? json.dewPointC;
  const pressure =
    pressureSaid(json) !== null || forAll.pressure === undefined || forAll.pressure.kind === 'standard'
      ? {}
      : pressureJson(forAll.pressure);
  const humidity =
    ownHumidity !== undefined || forAll.relativeHumidity === undefined
      ? {}
      : { relativeHumidity: forAll.relativeHumidity };
  return { ...json, ...pressure, ...humidity, elevationM };
}

function hourFromJson(json: CompleteHour, path: Path): Result<Hour, readonly ContractProblem[]> {
  const air = airFromJson(json, path);
  if (!air.ok) return air;
  const { temperature, pressure, pressureFrom, relativeHumidity } = air.value;
  return ok({
    at: instantFromJson(json.time),
    temperature,
    pressure,
    pressureFrom,
    relativeHumidity,
    ...(json.pressureConfirmed === true ? { pressureConfirmed: true } : {}),
    spread: null,
    origin: 'typed',
    ...skyFromJson(json),
  });
}
