const DATE = /^\d{4}-\d{2}-\d{2}$/;
const CLOCK = /^(\d{1,2}):(\d{2})(?::(\d{2}))?$/;

/** The date of a moment in UTC, such as 2027-01-16; years past 9999 with a sign (ISO 8601, expanded). */
export function utcDate(ms: number): string {
  const [date = ''] = new Date(ms).toISOString().split('T');
  return date;
}

/** Milliseconds since 1970-01-01T00:00Z of a date's midnight in UTC; null where the text is no date. */
export function dateStart(date: string): number | null {
  if (!DATE.test(date)) return null;
  const ms = Date.parse(`${date}T00:00:00Z`);
  // Some engines take 30 February for 2 March.
  return !Number.isNaN(ms) && utcDate(ms) === date ? ms : null;
}

/** Seconds since midnight of a clock time from 00:00 to 24:00; null where it is none. */
export function clockSeconds(clock: string): number | null {
  const match = CLOCK.exec(clock);
  if (match === null) return null;
  const [hour, minute, second] = [Number(match[1]), Number(match[2]), Number(match[3] ?? 0)];
  const seconds = hour * 3600 + minute * 60 + second;
  return minute < 60 && second < 60 && seconds <= 86_400 ? seconds : null;
}
