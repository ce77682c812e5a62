import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { kelvin, kelvinDifference, pascal, ratio } from '@/lib/units/quantity';
import { type Curve, shapePreservingCurve } from './interpolate';
import type { Hour } from './series';

/**
 * The one rule for gaps in a forecast: a stretch without an hour is filled from its two ends where they lie at most
 * this far apart, and stays empty where they lie further. Services themselves go to six-hourly steps after two days, so
 * a hole of that length hides no more than they do; over more a night's low can hide unseen. (Judgement, no source.)
 */
export const LONGEST_FILL_MS = 6 * HOUR_MS;

/**
 * Air at any instant from the first hour to the last; null outside. An instant on an hour gives that hour. What is no
 * number (where its pressure is from, who gave it) is that of the hour before.
 */
export function hourCurve<H extends Hour>(hours: readonly H[]): (at: Instant) => H | null {
  const through = (value: (hour: H) => number): Curve =>
    shapePreservingCurve(hours.map((hour) => ({ x: hour.at, y: value(hour) })));
  const temperature = through((hour) => hour.temperature);
  const pressure = through((hour) => hour.pressure);
  const humidity = through((hour) => hour.relativeHumidity);
  const spread = hours.every((hour) => hour.spread !== null) ? through((hour) => hour.spread ?? 0) : null;
  return (at) => {
    const before = hours.findLast((hour) => hour.at <= at);
    if (before === undefined || before.at === at) return before ?? null;
    const [t, p, rh] = [temperature(at), pressure(at), humidity(at)];
    if (t === null || p === null || rh === null) return null;
    const deviation = spread?.(at) ?? null;
    return {
      ...before,
      at,
      temperature: kelvin(t),
      pressure: pascal(p),
      relativeHumidity: ratio(rh),
      spread: deviation === null ? null : kelvinDifference(deviation),
      origin: 'between',
    };
  };
}

/** Air at any instant that has hours close enough to take it from; null outside and within a gap too long to fill. */
export function knownCurve<H extends Hour>(hours: readonly H[]): (at: Instant) => H | null {
  const curve = hourCurve(hours);
  return (at) => {
    const before = hours.findLast((hour) => hour.at <= at);
    const after = hours.find((hour) => hour.at >= at);
    if (before === undefined || after === undefined || after.at - before.at > LONGEST_FILL_MS) return null;
    return curve(at);
  };
}

/** The hour at an instant; null outside the series and within a gap too long to fill. */
export function hourAt<H extends Hour>({ hours }: { readonly hours: readonly H[] }, at: Instant): H | null {
  return knownCurve(hours)(at);
}
