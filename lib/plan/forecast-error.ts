import type { Hour, HourSeries } from '@/lib/hours/series';
import { HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { clearCalm, coldness, mayBeRawModel, ramp, unknownSky } from './clear-calm';
import {
  type AtLead,
  COLD_FROM,
  COLD_VARIANCE,
  ENSEMBLE_FLOOR_SD,
  LASTING_SHARE,
  MOUNTAIN_ELEVATION,
  MOUNTAIN_FLOOR_SD,
  MOUNTAIN_STEP,
  PRESSURE_HEIGHT_SD,
  PRESSURE_MEMORY_HOURS,
  PRESSURE_SD_BY_LEAD,
  RAW_MODEL_BIAS,
  RAW_MODEL_BIAS_SD,
  RAW_MODEL_WIDENING,
  SEASON_SD,
  STANDARD_PRESSURE_SD,
  TEMPERATURE_GROWTH,
  TEMPERATURE_MEMORY_HOURS,
  TEMPERATURE_VARIANCE,
  TYPED_AS_OF_MINUTES,
  UNKNOWN_SKY_SD,
} from './judgement';
import { knownOffset, lastingLeft, type PlaceOffset } from './place-offset';

/**
 * How a forecast goes wrong (what is, minus what was forecast): a part a that stays all night, and a part w that wanders,
 *
 *     e(t) = m(t) + σ(t) (√c a + √(1 − c) w(t))
 *     cov(e(s), e(t)) = σ(s) σ(t) [c + (1 − c) exp(−|θ(t) − θ(s)|)]
 *
 * a is a standard normal number and w an Ornstein-Uhlenbeck process of unit variance on a clock θ. This stays a
 * covariance whatever σ and θ do.
 */
export type ErrorProcess = {
  /** m(t). */
  readonly mean: (at: number) => number;
  /** σ(t). */
  readonly sd: (at: number) => number;
  /** θ(t), in memories. */
  readonly clock: (at: number) => number;
  /** c, the share of the variance that stays. */
  readonly lasting: number;
};

export type ErrorRequest = {
  readonly series: HourSeries;
  readonly now: Instant;
  /** What past nights taught about the place. */
  readonly placeOffset?: PlaceOffset;
};

/** A number by lead time: straight lines between the given leads, the ends held. */
export function atLead(table: readonly AtLead[], leadHours: number): number {
  const after = table.findIndex((entry) => entry.hours > leadHours);
  if (after === 0) return table[0]!.value;
  if (after === -1) return table.at(-1)!.value;
  const [a, b] = [table[after - 1]!, table[after]!];
  return a.value + ((b.value - a.value) * (leadHours - a.hours)) / (b.hours - a.hours);
}

/**
 * When the forecast was made. Typed hours have no such time: they are taken as a forecast of the quarter of an hour that
 * runs, so that their plan does not change with every tick of a clock.
 */
export function issuedAt({ series, now }: ErrorRequest): Instant {
  const quarter = TYPED_AS_OF_MINUTES * MINUTE_MS;
  return series.source.issuedAt ?? series.source.fetchedAt ?? instant(Math.floor(now / quarter) * quarter);
}

/** A value of every hour, straight lines between, the ends held. */
function betweenHours({ hours }: HourSeries, values: readonly number[]): (at: number) => number {
  return (at) => {
    let after = 0;
    while (after < hours.length && hours[after]!.at <= at) after += 1;
    if (after === 0) return values[0]!;
    if (after === hours.length) return values.at(-1)!;
    const a = hours[after - 1]!;
    const b = hours[after]!;
    return values[after - 1]! + ((values[after]! - values[after - 1]!) * (at - a.at)) / (b.at - a.at);
  };
}

/** What the cold that is forecast adds to the variance [K²]. */
function coldVariance(temperature: number): number {
  return COLD_VARIANCE * Math.max(0, COLD_FROM - temperature);
}

/**
 * Standard deviation of an official forecast's temperature [K] by lead time and by the temperature that is forecast:
 *
 *     σ² = g(lead)² [3.8 + 0.235 max(0, −5 °C − T)],
 *
 * and beyond six days on towards the spread of the season.
 */
export function forecastSd(temperature: number, leadHours: number): number {
  const told =
    atLead(TEMPERATURE_GROWTH, leadHours) * Math.sqrt(TEMPERATURE_VARIANCE + coldVariance(temperature));
  const last = TEMPERATURE_GROWTH.at(-1)!.hours;
  if (leadHours <= last) return told;
  return atLead(
    [
      { hours: last, value: told },
      ...SEASON_SD.map(({ hours, value }) => ({ hours, value: Math.max(told, value) })),
    ],
    leadHours,
  );
}

/** How much of a site among mountains this is: 0 to 1, by its height and by its step from the service's own terrain. */
function mountains({ elevation, source }: HourSeries): number {
  const step = source.modelElevation === null ? 0 : Math.abs(elevation - source.modelElevation);
  return Math.max(
    ramp(elevation, { none: MOUNTAIN_ELEVATION.from, whole: MOUNTAIN_ELEVATION.to }),
    ramp(step, { none: MOUNTAIN_STEP.from, whole: MOUNTAIN_STEP.to }),
  );
}

/**
 * Standard deviation with an ensemble [K]: √(spread² + floor²), the floor by terrain. No ensemble was measured in deep
 * cold, so what the cold adds to other forecasts is added here too: judgement, on the safe side.
 */
function ensembleSd(spread: number, { temperature }: Hour, series: HourSeries): number {
  const floor = ENSEMBLE_FLOOR_SD + (MOUNTAIN_FLOOR_SD - ENSEMBLE_FLOOR_SD) * mountains(series);
  return Math.sqrt(spread ** 2 + floor ** 2 + coldVariance(temperature));
}

/**
 * Temperature error: what is, minus what the hours say. A raw model's is wider in the cold, and colder on clear nights by a
 * bias that one night has and another has not: its spread stays all night.
 */
export function temperatureError(request: ErrorRequest): ErrorProcess {
  const { series } = request;
  const issued = issuedAt(request);
  const sds = series.hours.map((hour) => {
    const { at, spread, temperature } = hour;
    const sd =
      spread === null ? forecastSd(temperature, (at - issued) / HOUR_MS) : ensembleSd(spread, hour, series);
    return mayBeRawModel(hour) ? sd * (1 + (RAW_MODEL_WIDENING - 1) * coldness(hour)) : sd;
  });
  const raw = series.hours.map((hour) => (mayBeRawModel(hour) ? hour : null));
  const biased = raw.map((hour) => (hour === null ? 0 : clearCalm(hour)));
  const start = series.hours[0]?.at ?? issued;
  return taught(request, {
    means: biased.map((share) => -RAW_MODEL_BIAS * share),
    sds,
    biasSds: raw.map((hour, i) =>
      hour === null ? 0 : RAW_MODEL_BIAS_SD * biased[i]! + UNKNOWN_SKY_SD * unknownSky(hour),
    ),
    clock: (at) => (at - start) / (TEMPERATURE_MEMORY_HOURS * HOUR_MS),
  });
}

type Untaught = {
  readonly means: readonly number[];
  /** Without what the bias's own spread adds. */
  readonly sds: readonly number[];
  readonly biasSds: readonly number[];
  readonly clock: ErrorProcess['clock'];
};

/**
 * The error with what is known about the place: its mean offset, and without the part of the lasting variance that is no
 * longer unknown. The measured sizes have every place's own offset in them, so nothing learnt changes nothing.
 */
function taught({ series, placeOffset }: ErrorRequest, untaught: Untaught): ErrorProcess {
  const { means, sds, biasSds, clock } = untaught;
  const known = series.hours.map((hour) => knownOffset(placeOffset, hour));
  const lasting = sds.map(
    (sd, i) => lastingLeft(LASTING_SHARE * sd ** 2, known[i]!.variance) + biasSds[i]! ** 2,
  );
  const left = sds.map((sd, i) => (1 - LASTING_SHARE) * sd ** 2 + lasting[i]!);
  const sum = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);
  const untouched = known.every(({ variance }, i) => variance === 0 && biasSds[i] === 0);
  return {
    mean: betweenHours(
      series,
      means.map((mean, i) => mean + known[i]!.mean),
    ),
    sd: betweenHours(series, untouched ? sds : left.map(Math.sqrt)),
    clock,
    // One share for the whole night, as the law has it: that of its hours together.
    lasting: untouched ? LASTING_SHARE : sum(lasting) / sum(left),
  };
}

/** Pressure error: mostly height and sensor, so nearly constant through a night; wide where it is only an estimate. */
export function pressureError(request: ErrorRequest): ErrorProcess {
  const { series } = request;
  const issued = issuedAt(request);
  const sds = series.hours.map(({ at, pressureFrom }) =>
    pressureFrom === 'standard'
      ? STANDARD_PRESSURE_SD
      : Math.hypot(atLead(PRESSURE_SD_BY_LEAD, (at - issued) / HOUR_MS), PRESSURE_HEIGHT_SD),
  );
  const start = series.hours[0]?.at ?? issued;
  return {
    mean: () => 0,
    sd: betweenHours(series, sds),
    clock: (at) => (at - start) / (PRESSURE_MEMORY_HOURS * HOUR_MS),
    lasting: 0,
  };
}
