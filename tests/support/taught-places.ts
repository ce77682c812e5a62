import { temperatureError } from '@/lib/plan/forecast-error';
import type { PastEvent } from '@/lib/plan/learn-place';
import { offsetAt, type PlaceOffset } from '@/lib/plan/place-offset';
import type { Reading } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { nightAround } from '@/lib/time/sun';
import { kelvin } from '@/lib/units/quantity';
import { gaussian } from './plain-draws';
import { clock, seriesOf } from './plan-cases';

/** Where the invented nights of `plan-cases` are, so that 17:00 UTC is near sunset. */
export const LAKE = { latitude: 46.8, longitude: 0 };

export type OffsetByHour = (hoursAfterSunset: number) => number;

const DAY_MS = 24 * HOUR_MS;

/** A walk over the hours of a night with a memory of so many hours, of unit variance. */
function walk(length: number, memory: number, next: () => number): readonly number[] {
  const kept = Math.exp(-1 / memory);
  const values = [next()];
  while (values.length < length) values.push(kept * values.at(-1)! + Math.sqrt(1 - kept ** 2) * next());
  return values;
}

/** A place drawn as places are: half of its variance at every hour, half with the hour. */
export function drawnPlace(sd: number, next: () => number): OffsetByHour {
  const always = next();
  const byHour = walk(16, 4, next);
  return (hours) => sd * Math.sqrt(0.5) * (always + byHour[Math.round(hours)]!);
}

type Evenings = {
  readonly nights: number;
  readonly perNight: number;
  readonly rawModel: boolean;
  /** Spread between places that the measured sizes have in them [K]. */
  readonly placeSd: number;
};

/**
 * Weekly evenings at a place as they really were: its own offset, a constant of the night, an error that wanders, and a
 * thermometer, all as stated and by a way of their own.
 */
export function evenings(
  offset: OffsetByHour,
  { nights, perNight, rawModel, placeSd }: Evenings,
  next: () => number,
): readonly PastEvent[] {
  return Array.from({ length: nights }, (_, n): PastEvent => {
    const back = (nights - n) * 7 * DAY_MS;
    const told = seriesOf(new Array<number>(12).fill(-3), { rawModel });
    const series = {
      ...told,
      source: { ...told.source, issuedAt: instant(told.source.issuedAt! - back - 12 * HOUR_MS) },
      hours: told.hours.map((hour) => ({ ...hour, at: instant(hour.at - back) })),
    };
    const { sd } = temperatureError({ series, now: series.hours[0]!.at });
    const sunset = nightAround(instant(clock(20) - back), LAKE).sunset!;
    const constant = next();
    const wandering = walk(12, 6, next);
    const readings = Array.from({ length: perNight }, (_, i): Reading => {
      const hour = series.hours[2 + 2 * i]!;
      const size = sd(hour.at);
      const error =
        offset((hour.at - sunset) / HOUR_MS) +
        Math.sqrt(Math.max(0.11 * size ** 2, 0.22 * size ** 2 - placeSd ** 2)) * constant +
        Math.sqrt(0.78) * size * wandering[2 + 2 * i]! +
        0.5 * next();
      return {
        id: `${n}.${i}`,
        at: hour.at,
        temperature: kelvin(hour.temperature + error),
        stationPressure: null,
        relativeHumidity: null,
        confirmed: true,
      };
    });
    return { series, readings };
  });
}

export const normals = (seed: number) => gaussian(seed);

/** When so many hours are gone since sunset on the evening that is planned. */
export function afterSunset(hours: number): Instant {
  return instant(nightAround(clock(20), LAKE).sunset! + hours * HOUR_MS);
}

/** Whether what is counted on, with its 80 % range, holds what a place really is. */
export function holds(learnt: PlaceOffset, truth: OffsetByHour, hours: number): boolean {
  const { mean, sd } = offsetAt(learnt, afterSunset(hours));
  return Math.abs(truth(hours) - mean) <= 1.2816 * sd;
}
