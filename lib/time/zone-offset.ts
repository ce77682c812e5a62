import { HOUR_MS, MINUTE_MS } from './instant';

/** Milliseconds east of UTC at a moment. */
export type ZoneOffset = (at: number) => number;

const DAY_MS = 24 * HOUR_MS;
/** How many zones, and how many days of one, are remembered: more than anybody looks at, and an end to it. */
const ZONES_MOST = 500;
const DAYS_MOST = 2000;

/** As Intl writes it in US English: GMT, GMT-06:00, GMT+05:53:28 (local mean time of old). */
const LONG_OFFSET = /^GMT(?:([+-])(\d{2}):(\d{2})(?::(\d{2}))?)?$/;

function readOffset(text: string): number {
  const match = LONG_OFFSET.exec(text);
  if (match === null) throw new RangeError(`not an offset: ${text}`);
  const [hours, minutes, seconds] = [match[2], match[3], match[4]].map((part) => Number(part ?? 0));
  const size = (hours ?? 0) * HOUR_MS + (minutes ?? 0) * MINUTE_MS + (seconds ?? 0) * 1000;
  return match[1] === '-' ? -size : size;
}

/**
 * Asks the runtime's zone data twice a day, at midnight UTC, since each question is slow and a page shows the same few
 * days: where both answers are one, the day has no change (no zone ever changed there and back within a day).
 */
function rememberDays(ask: ZoneOffset): ZoneOffset {
  const midnights = new Map<number, number>();
  const atMidnight = (day: number): number => {
    const before = midnights.get(day);
    if (before !== undefined) return before;
    if (midnights.size >= DAYS_MOST) midnights.clear();
    const offset = ask(day * DAY_MS);
    midnights.set(day, offset);
    return offset;
  };
  return (at) => {
    const day = Math.floor(at / DAY_MS);
    const offset = atMidnight(day);
    return offset === atMidnight(day + 1) ? offset : ask(at);
  };
}

function offsetIn(zone: string): ZoneOffset | null {
  if (zone === '') return null;
  try {
    // A language of its own, so that the device's digits and signs do not matter.
    const format = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' });
    const nameAt = (at: number) => format.formatToParts(at).find(({ type }) => type === 'timeZoneName');
    return rememberDays((at) => readOffset(nameAt(at)?.value ?? ''));
  } catch {
    return null;
  }
}

const known = new Map<string, ZoneOffset | null>();

/** How a zone stands off UTC; null where the runtime knows no zone of that name (ECMA-402, AvailableNamedTimeZones). */
export function zoneOffset(zone: string): ZoneOffset | null {
  const before = known.get(zone);
  if (before !== undefined) return before;
  if (known.size >= ZONES_MOST) known.clear();
  const offset = offsetIn(zone);
  known.set(zone, offset);
  return offset;
}
