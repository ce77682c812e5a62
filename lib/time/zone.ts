import { fail, ok, type Result } from '@/lib/result/result';
import { clockSeconds, dateStart, utcDate } from './calendar';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from './instant';
import { zoneOffset } from './zone-offset';

export type InstantProblem =
  /** The time says neither Z nor an offset, so it could be any of 24 moments. */
  | { readonly code: 'no-offset'; readonly text: string }
  | { readonly code: 'not-a-time'; readonly text: string };

/** True for an IANA name this machine knows, such as America/Chicago. */
export function zoneExists(zone: string): boolean {
  return zoneOffset(zone) !== null;
}

/** How a person reads a clock: 22:05 or 10:05 pm. */
export type HourStyle = '24' | '12';

/** A zone with how its clock is written; a bare zone is written on the 24-hour clock, as files and answers are. */
export type ClockZone = string | { readonly zone: string; readonly hours: HourStyle };

/** The zone alone, for what asks about moments and not about words. */
export function zoneName(clock: ClockZone): string {
  return typeof clock === 'string' ? clock : clock.zone;
}

/**
 * What a clock and a calendar in the zone show, as the moment at which they show it in UTC. A text that names no zone
 * may stand in a form half typed, and in one kept from an earlier visit: it gives UTC, and a clock time says so
 * (`localClock`).
 */
function shown(at: Instant, clock: ClockZone): Date {
  return new Date(at + (zoneOffset(zoneName(clock))?.(at) ?? 0));
}

const WITH_OFFSET =
  /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})(?::(\d{2})(?:[.,](\d+))?)?(?:Z|([+-])(\d{2})(?::?(\d{2}))?)$/i;
const WITHOUT_OFFSET = /^\d{4}-\d{2}-\d{2}([T ]\d{1,2}:\d{2}(:\d{2}([.,]\d+)?)?)?$/;

/** Reads an ISO 8601 time that says its offset, such as 2027-01-16T19:30:00-06:00 or ...Z. */
export function readInstant(iso: string): Result<Instant, InstantProblem> {
  const text = iso.trim();
  const match = WITH_OFFSET.exec(text);
  if (match === null) return fail({ code: WITHOUT_OFFSET.test(text) ? 'no-offset' : 'not-a-time', text });
  const [, date = '', clock, second = '00', fraction = '0', sign, hours = '0', minutes = '0'] = match;
  const [day, seconds] = [dateStart(date), clockSeconds(`${clock}:${second}`)];
  if (day === null || seconds === null) return fail({ code: 'not-a-time', text });
  const past = Math.floor(Number(`0.${fraction}`) * 1000);
  const east = (Number(hours) * HOUR_MS + Number(minutes) * MINUTE_MS) * (sign === '-' ? -1 : 1);
  return ok(instant(day + seconds * 1000 + past - east));
}

/** An ISO text of a moment in UTC without its Z; milliseconds only where there are any. */
const isoOf = (time: Date): string => time.toISOString().replace(/(\.000)?Z$/, '');

/** 2027-01-17T04:05:00Z; with milliseconds only where there are any. */
export function isoUtc(at: Instant): string {
  return `${isoOf(new Date(at))}Z`;
}

/** Zones that are UTC by their name (ISO 8601 writes Z). */
const UTC = /^(utc|gmt)$/i;

const two = (value: number): string => String(Math.trunc(value)).padStart(2, '0');

/** 2027-01-16T22:05:00-06:00; UTC itself, and a zone that does not exist, as Z. */
export function isoLocal(at: Instant, zone: ClockZone): string {
  if (UTC.test(zoneName(zone)) || !zoneExists(zoneName(zone))) return isoUtc(at);
  const east = offsetMinutes(at, zone);
  const size = Math.abs(east);
  return `${isoOf(shown(at, zone))}${east < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
}

/** 22:05, of a time that is shown. */
const face24 = (time: Date): string => time.toISOString().split('T')[1]?.slice(0, 5) ?? '';

/**
 * 22:05; or 10:05 pm, held together, where the clock is written so; "04:05 UTC" for a zone that does not exist, so that
 * nobody takes it for the track's.
 */
export function localClock(at: Instant, clock: ClockZone): string {
  const face = face24(shown(at, clock));
  const written = typeof clock === 'string' ? face : clockFace(face, clock.hours);
  return zoneExists(zoneName(clock)) ? written : `${written} UTC`;
}

/** A time of the 24-hour clock, such as 22:05, as the person reads it. */
export function clockFace(time: string, hours: HourStyle): string {
  const hour = Number(time.slice(0, 2));
  if (hours === '24') return time;
  return `${hour % 12 === 0 ? 12 : hour % 12}${time.slice(2)}\u00a0${hour < 12 ? 'am' : 'pm'}`;
}

/** 2027-01-16. */
export function localDate(at: Instant, zone: ClockZone): string {
  return utcDate(shown(at, zone).getTime());
}

/** 1 = Monday ... 7 = Sunday (ISO 8601). */
export function localWeekday(at: Instant, zone: ClockZone): number {
  return shown(at, zone).getUTCDay() || 7;
}

/** Minutes east of UTC at this instant. */
export function offsetMinutes(at: Instant, zone: ClockZone): number {
  return (zoneOffset(zoneName(zone))?.(at) ?? 0) / MINUTE_MS;
}

/** Milliseconds since the last full hour of a time that is shown. */
const pastHour = (time: Date): number => ((time.getTime() % HOUR_MS) + HOUR_MS) % HOUR_MS;

/**
 * The full local hours from `from` to `to`, both included, an hour of real time apart: a night in which clocks go
 * back has 25 of them and shows one clock time twice. `every` keeps only hours divisible by it (3: 0, 3, 6 ...).
 */
export function hourTicks(
  span: { readonly from: Instant; readonly to: Instant },
  zone: ClockZone,
  every = 1,
): readonly Instant[] {
  const nextFullHour = (from: Instant): Instant => {
    let at = from;
    // Again where the clocks change by half an hour on the way.
    for (let past = pastHour(shown(at, zone)); past !== 0; past = pastHour(shown(at, zone)))
      at = instant(at + HOUR_MS - past);
    return at;
  };
  const ticks: Instant[] = [];
  for (let at = nextFullHour(span.from); at <= span.to; at = nextFullHour(instant(at + HOUR_MS)))
    if (shown(at, zone).getUTCHours() % every === 0) ticks.push(at);
  return ticks;
}
