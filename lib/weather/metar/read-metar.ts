import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import type { Pascal, SpeedMs } from '@/lib/units/quantity';
import {
  OBSERVATION_AHEAD_MS,
  type Observation,
  OLDEST_OBSERVATION_MS,
} from '@/lib/weather/stations/observation';
import {
  END,
  readPressureGroup,
  readTemperatures,
  readTenths,
  readWind,
  STATION,
  saysNothing,
  type Temperatures,
  TIME,
} from './groups';
import type { MetarProblem } from './metar-problem';

/** Longer than any report. */
const MOST_CHARACTERS = 2000;
/** Whole degrees, rounded, may be this far from tenths [K]. */
const ROUNDING_K = 0.6;
/** An inch's hundredths and whole hectopascals, rounded down, may differ by this [Pa]. */
const ROUNDING_PA = 150;

/**
 * Reads a METAR or SPECI as it is broadcast (WMO-No. 306, FM 15 and FM 16). Strict: a group that no report has is a slip
 * or another message, and refuses it all, since a wrong temperature is worse than none.
 */
export function readMetar(text: string, now: Instant): Result<Observation, MetarProblem> {
  const groups = groupsOf(text);
  if (groups.length === 0) return fail({ code: 'empty' });
  const [station, time, ...rest] = groups;
  if (station === undefined || time === undefined || !STATION.test(station) || !TIME.test(time))
    return fail({ code: 'no-report' });
  if (rest.some((group) => TIME.test(group))) return fail({ code: 'several-reports' });
  const at = readTime(time, now);
  if (!at.ok) return at;
  const body = readBody(rest);
  if (!body.ok) return body;
  const { temperature, dewPoint } = body.value.air;
  if (temperature === null) return fail({ code: 'no-temperature' });
  const { altimeter, wind } = body.value;
  return ok({ station, at: at.value, temperature, dewPoint, altimeter, wind });
}

/** The groups of one report, without what only says that it is one. */
function groupsOf(text: string): readonly string[] {
  const groups = text.slice(0, MOST_CHARACTERS).toUpperCase().trim().replace(/=$/, '').split(/\s+/);
  const kinds = ['METAR', 'SPECI', 'COR'];
  const first = groups.findIndex((group) => !kinds.includes(group));
  return first === -1 ? [] : groups.slice(first).filter((group) => group !== '');
}

const DAY_MS = 24 * 60 * MINUTE_MS;

/** The last moment that had this day of the month and time. */
function readTime(group: string, now: Instant): Result<Instant, MetarProblem> {
  const [day, hour, minute] = TIME.exec(group)!.slice(1).map(Number) as [number, number, number];
  if (hour > 23 || minute > 59) return fail({ code: 'no-such-time', group });
  const latest = now + OBSERVATION_AHEAD_MS;
  for (let back = 0; back < 62; back++) {
    const date = new Date(latest - back * DAY_MS);
    if (date.getUTCDate() !== day) continue;
    const at = Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), day, hour, minute);
    if (at > latest) continue;
    return now - at > OLDEST_OBSERVATION_MS ? fail({ code: 'too-old', at: instant(at) }) : ok(instant(at));
  }
  return fail({ code: 'no-such-time', group });
}

type Body = {
  readonly air: Temperatures;
  readonly altimeter: Pascal | null;
  readonly wind: SpeedMs | null;
};

function readBody(groups: readonly string[]): Result<Body, MetarProblem> {
  if (groups.includes('NIL')) return fail({ code: 'nil' });
  const end = groups.findIndex((group) => END.test(group));
  const body = end === -1 ? groups : groups.slice(0, end);
  const strange = body.find((group) => !isKnown(group));
  if (strange !== undefined) return fail({ code: 'unknown-group', group: strange });
  const air = readAir(body, end === -1 ? [] : groups.slice(end));
  if (!air.ok) return air;
  const altimeter = readAltimeter(body);
  if (!altimeter.ok) return altimeter;
  const wind = body.map(readWind).find((speed) => speed !== undefined) ?? null;
  return ok({ air: air.value, altimeter: altimeter.value, wind });
}

function isKnown(group: string): boolean {
  const reads = [readWind, readTemperatures, readPressureGroup];
  return reads.some((read) => read(group) !== undefined) || saysNothing(group);
}

const NOT_OBSERVED: Temperatures = { temperature: null, dewPoint: null };

/** Temperature and dew point, in tenths where the remarks have them. */
function readAir(body: readonly string[], remarks: readonly string[]): Result<Temperatures, MetarProblem> {
  const found = body.filter((group) => readTemperatures(group) !== undefined);
  const [group = '', another] = found;
  if (another !== undefined) return fail({ code: 'disagrees', group: another });
  const whole = readTemperatures(group) ?? NOT_OBSERVED;
  const fine = remarks.find((remark) => readTenths(remark) !== undefined) ?? '';
  const tenths = readTenths(fine);
  const air = {
    temperature: tenths?.temperature ?? whole.temperature,
    dewPoint: tenths?.dewPoint ?? whole.dewPoint,
  };
  if (apart(whole.temperature, air.temperature) || apart(whole.dewPoint, air.dewPoint))
    return fail({ code: 'disagrees', group: fine });
  const { temperature, dewPoint } = air;
  const odd =
    (temperature !== null && !within(temperature, RANGE.temperature)) ||
    (dewPoint !== null && !within(dewPoint, RANGE.dewPoint)) ||
    // No air holds more water than its temperature allows; both are rounded.
    (temperature !== null && dewPoint !== null && dewPoint > temperature + ROUNDING_K);
  return odd ? fail({ code: 'implausible', group }) : ok(air);
}

function apart(whole: number | null, fine: number | null): boolean {
  return whole !== null && fine !== null && Math.abs(whole - fine) > ROUNDING_K;
}

function readAltimeter(body: readonly string[]): Result<Pascal | null, MetarProblem> {
  const told = body.flatMap((group) => {
    const value = readPressureGroup(group);
    return value === undefined || value === null ? [] : [{ group, value }];
  });
  const [first] = told;
  if (first === undefined) return ok(null);
  const odd = told.find(({ value }) => !within(value, RANGE.seaLevel));
  if (odd !== undefined) return fail({ code: 'implausible', group: odd.group });
  const other = told.find(({ value }) => Math.abs(value - first.value) > ROUNDING_PA);
  return other === undefined ? ok(first.value) : fail({ code: 'disagrees', group: other.group });
}
