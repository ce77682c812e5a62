import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { type KelvinDifference, kelvinDifference } from '@/lib/units/quantity';
import { hourAt } from './at';
import { moveSeries } from './elevation-shift';
import { fillGaps, fillShortGaps, type HoursGap } from './gaps';
import type { Hour, HourSeries } from './series';

/**
 * Longest time between two typed hours that a curve may bridge: typed points are few and meant to be bridged, but not
 * over a night and a day. (Judgement, no source.)
 */
export const LONGEST_BETWEEN_MS = 12 * HOUR_MS;

/** An end of the typed hours, and how far they stand from the forecast there. */
export type Seam = { readonly at: Instant; readonly typedMinusForecast: KelvinDifference };

export type MixedHours = {
  readonly series: HourSeries;
  /** Stretches without hours, too long to fill. */
  readonly gaps: readonly HoursGap[];
  /** Where typed hours and forecast meet, so that a step between them can be told. */
  readonly seams: readonly Seam[];
};

/** Runs of typed hours that a curve may bridge; the forecast stands between the runs. */
function stretchesOf(hours: readonly Hour[]): readonly (readonly [Hour, Hour])[] {
  const starts = hours.filter(
    (hour, i) => hour.at - (hours[i - 1]?.at ?? Number.NEGATIVE_INFINITY) > LONGEST_BETWEEN_MS,
  );
  const ends = hours.filter(
    (hour, i) => (hours[i + 1]?.at ?? Number.POSITIVE_INFINITY) - hour.at > LONGEST_BETWEEN_MS,
  );
  return starts.map((start, i) => [start, ends[i] ?? start]);
}

function seamsOf(stretches: readonly (readonly [Hour, Hour])[], forecast: HourSeries): readonly Seam[] {
  return stretches.flatMap(([start, end]) =>
    (start === end ? [start] : [start, end]).flatMap((hour) => {
      const told = hourAt(forecast, hour.at);
      return told === null
        ? []
        : [{ at: hour.at, typedMinusForecast: kelvinDifference(hour.temperature - told.temperature) }];
    }),
  );
}

/** Where no pressure was typed the forecast's is better than the standard atmosphere's. */
function withToldPressure(hour: Hour, forecast: HourSeries): Hour {
  if (hour.pressureFrom !== 'standard') return hour;
  const told = hourAt(forecast, hour.at);
  if (told === null || told.pressureFrom === 'standard') return hour;
  return {
    ...hour,
    pressure: told.pressure,
    pressureFrom: told.pressureFrom,
    pressureOrigin: told.origin === 'filled' ? 'filled' : 'forecast',
    ...(told.pressureBy === undefined ? {} : { pressureBy: told.pressureBy }),
  };
}

const hasHours = (series: HourSeries | null): series is HourSeries =>
  series !== null && series.hours.length > 0;

/**
 * One series from a forecast and typed hours: typed ones win from the first to the last, the forecast stands before
 * and after and where typed hours lie too far apart. The forecast is moved to the height of the typed hours, and lends
 * its pressure where none was typed.
 */
export function mixHours(forecast: HourSeries | null, typed: HourSeries | null): MixedHours | null {
  if (!hasHours(typed)) return hasHours(forecast) ? { ...fillShortGaps(forecast), seams: [] } : null;
  const rule = { longestMs: LONGEST_BETWEEN_MS, stepMs: HOUR_MS, anchor: null, origin: 'between' } as const;
  const bridged = fillGaps(typed, rule);
  if (!hasHours(forecast)) return { ...bridged, seams: [] };
  const moved = moveSeries(forecast, typed.elevation);
  const stretches = stretchesOf(bridged.series.hours);
  const kept = moved.hours.filter(
    (hour) => !stretches.some(([start, end]) => hour.at >= start.at && hour.at <= end.at),
  );
  const lent = bridged.series.hours.map((hour) => withToldPressure(hour, moved));
  const hours = [...kept, ...lent].sort((a, b) => a.at - b.at);
  const behind = kept.length > 0 || lent.some(({ pressureOrigin }) => pressureOrigin !== undefined);
  const source = behind ? moved.source : typed.source;
  return {
    ...fillShortGaps({ hours, elevation: typed.elevation, source }),
    seams: seamsOf(stretches, moved),
  };
}
