import { hourAt } from '@/lib/hours/at';
import { hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import { READING_TEMPERATURE_SD } from '@/lib/plan/judgement';
import type { Plan, PlanRequest, Reading } from '@/lib/plan/types';
import { type Instant, instant } from '@/lib/time/instant';
import { kelvinDifference } from '@/lib/units/quantity';
import type { ForecastReview } from './review';

/**
 * From this many readings on their spread is told: the sample sd of three has an interval from half to six times itself
 * (chi-squared, 95 %), of four from 0.57 to 3.7 times. Judgement where to draw the line.
 */
const LEAST_FOR_SPREAD = 4;

/** One thermometer shares its error between its readings, so more of them do not make it surer. */
const THERMOMETER = 2 * READING_TEMPERATURE_SD;

type Against = { readonly at: Instant; readonly off: number; readonly typed: boolean };

/** The hours as they were given against every reading that was believed. */
export function reviewForecast({ series, readings, runs }: PlanRequest, plan: Plan): ForecastReview {
  if (readings.length === 0) return { code: 'no-readings' };
  const against = believed(readings, plan).flatMap((reading) => offAt(reading, series));
  if (against.length === 0) return { code: 'none-counts', readings: readings.length };
  const offs = against.map(({ off }) => off);
  const times = against.map(({ at }) => at);
  const bias = offs.reduce((sum, off) => sum + off, 0) / offs.length;
  const typed = against.filter((each) => each.typed).length;
  return {
    code: 'read',
    count: against.length,
    bias: kelvinDifference(bias),
    least: kelvinDifference(Math.min(...offs)),
    most: kelvinDifference(Math.max(...offs)),
    spread: offs.length < LEAST_FOR_SPREAD ? null : kelvinDifference(sampleSd(offs, bias)),
    from: instant(Math.min(...times)),
    to: instant(Math.max(...times)),
    withinThermometer: Math.max(...offs.map(Math.abs)) <= THERMOMETER,
    hours: typed === 0 ? 'forecast' : typed === against.length ? 'typed' : 'both',
    madeDuring: madeDuring(series, Math.min(...runs.map(({ start }) => start))),
  };
}

/** Without those that stood so far from the hours that they were only asked about. */
function believed(readings: readonly Reading[], { warnings }: Plan): readonly Reading[] {
  const asked = new Set(
    warnings.flatMap((warning) => (warning.code === 'reading-far-off' ? [warning.readingId] : [])),
  );
  return readings.filter(({ id }) => !asked.has(id));
}

function offAt({ at, temperature }: Reading, series: HourSeries): readonly Against[] {
  const hour = hourAt(series, at);
  if (hour === null) return [];
  const before = series.hours.findLast((each) => each.at <= at) ?? hour;
  const typed = before.origin === 'typed' || before.origin === 'between';
  return [{ at, off: hour.temperature - temperature, typed }];
}

/** s² = Σ (xᵢ − x̄)² / (n − 1) */
function sampleSd(values: readonly number[], mean: number): number {
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

function madeDuring(series: HourSeries, firstStart: number): Instant | null {
  const { madeAt } = hoursProvenance(series);
  return madeAt !== null && madeAt > firstStart ? madeAt : null;
}
