import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { kelvin, type Pascal, pascal, ratio } from '@/lib/units/quantity';
import type { SiteHour } from './site-hour';

/** Two hours without a value lie between hours at most this far apart; a longer gap stays open [ms]. */
const LONGEST_FILLED_MS = 3 * HOUR_MS;

export type Row = { readonly at: Instant; readonly hour: SiteHour | null };

/**
 * Fills hours that a service lists without a value, up to two in a row, on the straight line between their neighbours,
 * and marks them. Longer gaps and gaps at either end are listed as missing: nothing is carried on beyond what is known.
 */
export function fillShortGaps(rows: readonly Row[]): {
  hours: readonly SiteHour[];
  missing: readonly Instant[];
} {
  const hours: SiteHour[] = [];
  const missing: Instant[] = [];
  rows.forEach(({ at, hour }, index) => {
    if (hour !== null) {
      hours.push(hour);
      return;
    }
    const before = neighbour(rows, index, -1);
    const after = neighbour(rows, index, 1);
    if (before === null || after === null || after.at - before.at > LONGEST_FILLED_MS) missing.push(at);
    else hours.push(between(before, after, at));
  });
  return { hours, missing };
}

function neighbour(rows: readonly Row[], index: number, step: 1 | -1): SiteHour | null {
  for (let i = index + step; i >= 0 && i < rows.length; i += step) {
    const hour = rows[i]?.hour;
    if (hour != null) return hour;
  }
  return null;
}

function between(before: SiteHour, after: SiteHour, at: Instant): SiteHour {
  const share = (at - before.at) / (after.at - before.at);
  const line = (from: number, to: number): number => from + (to - from) * share;
  return {
    ...before,
    at,
    temperature: kelvin(line(before.temperature, after.temperature)),
    relativeHumidity: ratio(line(before.relativeHumidity, after.relativeHumidity)),
    pressure: linePressure(before.pressure, after.pressure, share),
    // The ensemble says nothing about an hour that is not in it.
    spread: null,
    origin: 'filled',
  };
}

function linePressure(before: Pascal | null, after: Pascal | null, share: number): Pascal | null {
  if (before === null || after === null) return null;
  return pascal(before + (after - before) * share);
}
