import { DateTime, IANAZone } from 'luxon';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, type Instant, instant } from './instant';

export type InstantProblem =
  /** The time says neither Z nor an offset, so it could be any of 24 moments. */
  | { readonly code: 'no-offset'; readonly text: string }
  | { readonly code: 'not-a-time'; readonly text: string };

/** True for an IANA name this machine knows, such as America/Chicago. */
export function zoneExists(zone: string): boolean {
  // `create` remembers its answers; `isValidZone` asks the runtime anew, for each hour of a night.
  return IANAZone.create(zone).isValid;
}

/** How a person reads a clock: 22:05 or 10:05 pm. */
export type HourStyle = '24' | '12';

/** A zone with how its clock is written; a bare zone is written on the 24-hour clock, as files and answers are. */
export type ClockZone = string | { readonly zone: string; readonly hours: HourStyle };

/** The zone alone, for what asks about moments and not about words. */
export function zoneName(clock: ClockZone): string {
  return typeof clock === 'string' ? clock : clock.zone;
}

/** Digits as everywhere in the app, whatever the device's language writes. */
export const DIGITS = { locale: 'en-US' } as const;

/** A page shows the same few times over and over, and asking the zone's rules anew is slow. Immutable, so shared. */
const known = new Map<string, DateTime<true>>();
const KNOWN_MOST = 5000;

/**
 * A date and time in a zone. A text that names no zone may stand in a form half typed, and in one kept from an earlier
 * visit: it gives UTC, and a clock time says so (`localClock`).
 */
export function inZone(at: Instant, clock: ClockZone): DateTime<true> {
  const zone = zoneName(clock);
  const key = `${at} ${zone}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const local = DateTime.fromMillis(at, { zone: zoneExists(zone) ? zone : 'utc', ...DIGITS });
  if (!local.isValid) throw new RangeError(`not an instant: ${at}`);
  if (known.size >= KNOWN_MOST) known.clear();
  known.set(key, local);
  return local;
}

const WITH_OFFSET = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}([.,]\d+)?)?(Z|[+-]\d{2}(:?\d{2})?)$/i;
const WITHOUT_OFFSET = /^\d{4}-\d{2}-\d{2}([T ]\d{1,2}:\d{2}(:\d{2}([.,]\d+)?)?)?$/;

/** Reads an ISO 8601 time that says its offset, such as 2027-01-16T19:30:00-06:00 or ...Z. */
export function readInstant(iso: string): Result<Instant, InstantProblem> {
  const text = iso.trim();
  if (!WITH_OFFSET.test(text))
    return fail({ code: WITHOUT_OFFSET.test(text) ? 'no-offset' : 'not-a-time', text });
  const time = DateTime.fromISO(text.toUpperCase(), { setZone: true, ...DIGITS });
  return time.isValid ? ok(instant(time.toMillis())) : fail({ code: 'not-a-time', text });
}

/** 2027-01-17T04:05:00Z; with milliseconds only where there are any. */
export function isoUtc(at: Instant): string {
  return inZone(at, 'utc').toISO({ suppressMilliseconds: true });
}

/** 2027-01-16T22:05:00-06:00. */
export function isoLocal(at: Instant, zone: ClockZone): string {
  return inZone(at, zone).toISO({ suppressMilliseconds: true });
}

/**
 * 22:05; or 10:05 pm, held together, where the clock is written so; "04:05 UTC" for a zone that does not exist, so that
 * nobody takes it for the track's.
 */
export function localClock(at: Instant, clock: ClockZone): string {
  const face = inZone(at, clock).toFormat('HH:mm');
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
  return inZone(at, zone).toISODate();
}

/** 1 = Monday ... 7 = Sunday (ISO 8601). */
export function localWeekday(at: Instant, zone: ClockZone): number {
  return inZone(at, zone).weekday;
}

/** Minutes east of UTC at this instant. */
export function offsetMinutes(at: Instant, zone: ClockZone): number {
  return inZone(at, zone).offset;
}

/**
 * The full local hours from `from` to `to`, both included, an hour of real time apart: a night in which clocks go
 * back has 25 of them and shows one clock time twice. `every` keeps only hours divisible by it (3: 0, 3, 6 ...).
 */
export function hourTicks(
  span: { readonly from: Instant; readonly to: Instant },
  zone: ClockZone,
  every = 1,
): readonly Instant[] {
  const nextFullHour = (at: Instant): Instant => {
    const local = inZone(at, zone);
    const full = local.startOf('hour');
    // Real time, not calendar time: 'plus' of a calendar hour would skip the repeated one.
    return full.toMillis() === local.toMillis() ? at : instant(full.toMillis() + HOUR_MS);
  };
  const ticks: Instant[] = [];
  for (let at = nextFullHour(span.from); at <= span.to; at = nextFullHour(instant(at + HOUR_MS)))
    if (inZone(at, zone).hour % every === 0) ticks.push(at);
  return ticks;
}
