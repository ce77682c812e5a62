import { minutesOf, pastedClockText, readMoment } from '@/lib/hours/paste-moment';

/** "19:00" from "19:00", "1900", "19.00", "7 pm" or "7:00pm"; null where it is no clock time. */
export function clockOf(text: string): string | null {
  const moment = readMoment(text.trim(), true);
  if (moment === null || moment.clock === null || moment.date !== null) return null;
  return pastedClockText(minutesOf(moment.clock));
}

const MINUTES = /^(\d{1,3}(?:[.,]\d+)?)\s*(?:min|mins|minutes?|m|')?$/i;

/** "6", "6 min", "7,5 min"; null where it is no length of time. */
export function minutesFrom(text: string): number | null {
  const match = MINUTES.exec(text.trim());
  const minutes = match?.[1] === undefined ? null : Number(match[1].replace(',', '.'));
  return minutes !== null && minutes > 0 ? minutes : null;
}

/** What stands in "end or minutes": a number alone is minutes, anything with a clock's marks is a clock time. */
export type RunEnd = { readonly minutes: number } | { readonly clock: string };

export function runEndOf(text: string): RunEnd | null {
  const minutes = minutesFrom(text);
  if (minutes !== null) return { minutes };
  const clock = clockOf(text);
  return clock === null ? null : { clock };
}
