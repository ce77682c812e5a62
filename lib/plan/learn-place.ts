import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import type { SunPlace } from '@/lib/time/sun';
import { kelvinDifference } from '@/lib/units/quantity';
import { hoursAfterSunset, hoursBetween, nightNumber } from './after-sunset';
import { cholesky, forward, innerProduct } from './cholesky';
import { temperatureError } from './forecast-error';
import {
  LASTING_SHARE,
  MOST_TEACHING,
  NIGHT_TO_NIGHT,
  PLACE_EVERY_HOUR_SHARE,
  PLACE_HOURS,
  PLACE_SD,
  TEMPERATURE_MEMORY_HOURS,
} from './judgement';
import { type HoursKind, hoursKind, lastingLeft, type PlaceOffset } from './place-offset';
import { temperaturesRead } from './readings';
import type { Reading } from './types';

/** The hours that one event was planned with, and what was read at the track. */
export type PastEvent = { readonly series: HourSeries; readonly readings: readonly Reading[] };

type Lesson = {
  readonly at: Instant;
  /** What was read minus what was forecast [K]. */
  readonly off: number;
  /** The same, minus what such a night's forecast is off anyway [K]. */
  readonly value: number;
  /** The instrument's [K]. */
  readonly readSd: number;
  /** The forecast's error there [K]. */
  readonly sd: number;
  readonly hour: number;
  readonly night: number;
};

type Learner = { readonly place: SunPlace; readonly kind: HoursKind };

/** What the readings of an event say. Those of a station elsewhere say nothing about this place. */
function lessonsOf({ series, readings }: PastEvent, { place, kind }: Learner): readonly Lesson[] {
  const heard = temperaturesRead({ series, readings: readings.filter(({ from }) => from === undefined) });
  return heard.flatMap(({ at: time, value, sd: readSd }): readonly Lesson[] => {
    const at = instant(time);
    const hour = series.hours.findLast((each) => each.at <= at);
    if (hour === undefined || hoursKind(hour) !== kind) return [];
    const error = temperatureError({ series, now: at });
    return [
      {
        at,
        off: value,
        value: value - error.mean(at),
        readSd,
        sd: error.sd(at),
        hour: hoursAfterSunset(at, place),
        night: nightNumber(at, place),
      },
    ];
  });
}

/** Covariance of the place's own offset at two hours after sunset [K²]. */
function ownCovariance(kind: HoursKind, a: number, b: number): number {
  const byHour = Math.exp(-hoursBetween(a, b) / PLACE_HOURS);
  return PLACE_SD[kind] ** 2 * (PLACE_EVERY_HOUR_SHARE + (1 - PLACE_EVERY_HOUR_SHARE) * byHour);
}

/** Covariance of what is not the place: a night's constant, kept in part to the next, and what wanders [K²]. */
function nightCovariance(kind: HoursKind, a: Lesson, b: Lesson): number {
  // The measured lasting part has the places' own offsets in it.
  const constant = ({ sd }: Lesson) => Math.sqrt(lastingLeft(LASTING_SHARE * sd ** 2, PLACE_SD[kind] ** 2));
  const apart = Math.abs(a.at - b.at) / (TEMPERATURE_MEMORY_HOURS * HOUR_MS);
  return (
    constant(a) * constant(b) * NIGHT_TO_NIGHT ** Math.abs(a.night - b.night) +
    (1 - LASTING_SHARE) * a.sd * b.sd * Math.exp(-apart)
  );
}

/** Average of the nights' averages. */
function meanOfNights(lessons: readonly Lesson[], nights: readonly number[]): number {
  const means = nights.map((night) => {
    const own = lessons.filter((lesson) => lesson.night === night);
    return own.reduce((sum, { off }) => sum + off, 0) / own.length;
  });
  return means.reduce((sum, mean) => sum + mean, 0) / nights.length;
}

/**
 * A place's own offset by hour after sunset from past nights there; null where none taught. With the offset b normal
 * around nothing, B(h, h') = s² [q + (1 − q) exp(−|h − h'|/4 h)], and the nights' errors normal with covariance N,
 *
 *     mean(h) = B(h, H) (B(H, H) + N)⁻¹ y,   var(h) = B(h, h) − B(h, H) (B(H, H) + N)⁻¹ B(H, h)
 *
 * y are the readings against their hours at hours H after sunset. Source: Rasmussen & Williams, Gaussian Processes for
 * Machine Learning (2006), eq. 2.23-2.24.
 */
export function learnPlace(events: readonly PastEvent[], learner: Learner): PlaceOffset | null {
  const { kind, place } = learner;
  const lessons = events
    .flatMap((event) => lessonsOf(event, learner))
    .sort((a, b) => a.at - b.at)
    .slice(-MOST_TEACHING);
  if (lessons.length === 0) return null;
  const lower = cholesky(lessons.length, (i, j) => {
    const [a, b] = [lessons[i]!, lessons[j]!];
    const own = ownCovariance(kind, a.hour, b.hour) + nightCovariance(kind, a, b);
    return own + (i === j ? a.readSd ** 2 : 0);
  });
  const whitened = forward(lower, (i) => lessons[i]!.value);
  const nights = [...new Set(lessons.map(({ night }) => night))];
  return {
    place,
    kind,
    nights: nights.length,
    ran: kelvinDifference(meanOfNights(lessons, nights)),
    byHour: Array.from({ length: 24 }, (_, hour) => {
      const known = forward(lower, (i) => ownCovariance(kind, hour, lessons[i]!.hour));
      const left = ownCovariance(kind, hour, hour) - innerProduct(known, known);
      return { mean: innerProduct(known, whitened), sd: Math.sqrt(Math.max(0, left)) };
    }),
  };
}
