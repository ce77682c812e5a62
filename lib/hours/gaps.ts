import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { hourCurve, knownCurve, LONGEST_FILL_MS } from './at';
import type { Hour, HourOrigin, HourSeries } from './series';

/** A stretch between two hours with nothing in it. */
export type HoursGap = { readonly from: Instant; readonly to: Instant };

export type FilledSeries = { readonly series: HourSeries; readonly gaps: readonly HoursGap[] };

export type FillRule = {
  /** A longer gap stays empty and is reported. */
  readonly longestMs: number;
  readonly stepMs: number;
  /** Filled hours stand at multiples of the step after this instant; null: after the hour before the gap. */
  readonly anchor: Instant | null;
  readonly origin: HourOrigin;
};

/** Hours of services are exact; a minute forgives a typed 19:59. */
const SLACK_MS = 60_000;

function stepsWithin({ from, to }: HoursGap, { stepMs, anchor }: FillRule): readonly Instant[] {
  const start = anchor ?? from;
  const first = start + (Math.floor((from + SLACK_MS - start) / stepMs) + 1) * stepMs;
  const count = Math.max(0, Math.ceil((to - SLACK_MS - first) / stepMs));
  return Array.from({ length: count }, (_, i) => instant(first + i * stepMs));
}

/** Fills gaps from both ends and marks what was filled. Where there are no hours, there is no plan. */
export function fillGaps(series: HourSeries, rule: FillRule): FilledSeries {
  const curve = hourCurve(series.hours);
  const hours: Hour[] = [];
  const gaps: HoursGap[] = [];
  for (const [i, hour] of series.hours.entries()) {
    const before = series.hours[i - 1];
    if (before !== undefined) {
      const gap = { from: before.at, to: hour.at };
      if (gap.to - gap.from > rule.longestMs) gaps.push(gap);
      else
        for (const at of stepsWithin(gap, rule)) {
          const filled = curve(at);
          if (filled !== null) hours.push({ ...filled, origin: rule.origin });
        }
    }
    hours.push(hour);
  }
  return { series: { ...series, hours }, gaps };
}

/** A forecast with its short gaps filled hour by hour. */
export function fillShortGaps(series: HourSeries): FilledSeries {
  return fillGaps(series, { longestMs: LONGEST_FILL_MS, stepMs: HOUR_MS, anchor: null, origin: 'filled' });
}

/**
 * Moments that a service lists without a value, filled where they lie in a short gap; the others are missing, and so is
 * what comes before the first hour or after the last: nothing is carried on beyond what is known.
 */
export function fillListed<H extends Hour>(
  hours: readonly H[],
  listed: readonly Instant[],
): { readonly hours: readonly H[]; readonly missing: readonly Instant[] } {
  const curve = knownCurve(hours);
  const filled = listed.map((at) => curve(at)).filter((hour) => hour !== null);
  const found = new Set(filled.map(({ at }) => at));
  const marked = filled.map((hour): H => ({ ...hour, origin: 'filled' }));
  return {
    hours: [...hours, ...marked].sort((a, b) => a.at - b.at),
    missing: listed.filter((at) => !found.has(at)),
  };
}
