import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import {
  ENSEMBLE_FLOOR_SD,
  PRESSURE_MEMORY_HOURS,
  PRESSURE_SD_BY_LEAD,
  type SdAtLead,
  STANDARD_PRESSURE_SD,
  SUN_CHANGE_HOURS,
  TEMPERATURE_MEMORY_HOURS,
  TEMPERATURE_SD_BY_LEAD,
} from './judgement';

/**
 * How a forecast goes wrong: e(t) = σ(t) z(t), where z is an Ornstein-Uhlenbeck process of unit variance that runs on
 * a clock of its own, so that
 *
 *     cov(e(s), e(t)) = σ(s) σ(t) exp(−|θ(t) − θ(s)|)
 *
 * σ changes with lead time and θ runs faster around sunset and sunrise, and this stays a covariance whatever they are.
 */
export type ErrorProcess = {
  /** σ(t). */
  readonly sd: (at: number) => number;
  /** θ(t), in memories. */
  readonly clock: (at: number) => number;
};

export type ErrorRequest = {
  readonly series: HourSeries;
  readonly now: Instant;
  /** Sunsets and sunrises around the hours. */
  readonly sun: readonly Instant[];
};

/** σ by lead: straight lines between the given leads, the ends held. */
export function sdAtLead(table: readonly SdAtLead[], leadHours: number): number {
  const after = table.findIndex((entry) => entry.hours > leadHours);
  if (after === 0) return table[0]!.sd;
  if (after === -1) return table.at(-1)!.sd;
  const [a, b] = [table[after - 1]!, table[after]!];
  return a.sd + ((b.sd - a.sd) * (leadHours - a.hours)) / (b.hours - a.hours);
}

/** When the forecast was made. Typed hours have no such time: they are taken as a forecast of this moment. */
function issuedAt({ series, now }: ErrorRequest): Instant {
  return series.source.issuedAt ?? series.source.fetchedAt ?? now;
}

/** σ at every hour, straight lines between, the ends held. */
function betweenHours(series: HourSeries, sds: readonly number[]): (at: number) => number {
  const { hours } = series;
  return (at) => {
    const after = hours.findIndex((hour) => hour.at > at);
    if (after === 0) return sds[0]!;
    if (after === -1) return sds.at(-1)!;
    const [a, b] = [hours[after - 1]!, hours[after]!];
    return sds[after - 1]! + ((sds[after]! - sds[after - 1]!) * (at - a.at)) / (b.at - a.at);
  };
}

/** Stretches of fast change around the sun's rising and setting, merged where they touch. */
function fastStretches(sun: readonly Instant[]): readonly { readonly from: number; readonly to: number }[] {
  const half = SUN_CHANGE_HOURS * HOUR_MS;
  const merged: { from: number; to: number }[] = [];
  for (const at of [...sun].sort((a, b) => a - b)) {
    const last = merged.at(-1);
    if (last !== undefined && at - half <= last.to) last.to = at + half;
    else merged.push({ from: at - half, to: at + half });
  }
  return merged;
}

/**
 * Temperature error: σ by lead time or from an ensemble's spread, √(spread² + floor²); memory of a few hours, halved
 * around sunset and sunrise (there the clock runs twice as fast).
 */
export function temperatureError(request: ErrorRequest): ErrorProcess {
  const { series, sun } = request;
  const issued = issuedAt(request);
  const sds = series.hours.map(({ at, spread }) =>
    spread === null
      ? sdAtLead(TEMPERATURE_SD_BY_LEAD, (at - issued) / HOUR_MS)
      : Math.hypot(spread, ENSEMBLE_FLOOR_SD),
  );
  const start = series.hours[0]?.at ?? issued;
  const fast = fastStretches(sun);
  const memory = TEMPERATURE_MEMORY_HOURS * HOUR_MS;
  return {
    sd: betweenHours(series, sds),
    clock(at) {
      let extra = 0;
      for (const { from, to } of fast) extra += Math.min(at, to) - Math.min(at, from);
      // Stretches before the hours add the same to every clock reading, so they cancel in differences.
      return (at - start + extra) / memory;
    },
  };
}

/** Pressure error: mostly height and sensor, so nearly constant through a night; wide where it is only an estimate. */
export function pressureError(request: ErrorRequest): ErrorProcess {
  const { series } = request;
  const issued = issuedAt(request);
  const sds = series.hours.map(({ at, pressureFrom }) =>
    pressureFrom === 'standard'
      ? STANDARD_PRESSURE_SD
      : sdAtLead(PRESSURE_SD_BY_LEAD, (at - issued) / HOUR_MS),
  );
  const start = series.hours[0]?.at ?? issued;
  return {
    sd: betweenHours(series, sds),
    clock: (at) => (at - start) / (PRESSURE_MEMORY_HOURS * HOUR_MS),
  };
}
