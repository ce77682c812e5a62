import type { AirProblem, Humidity, PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { stationPressure } from '@/lib/air/pressure';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { type Kelvin, type Metre, pascal, type Ratio, ratio } from '@/lib/units/quantity';
import { type FilledSeries, fillGaps } from './gaps';
import { shapePreservingCurve } from './interpolate';
import { LONGEST_BETWEEN_MS } from './mix';
import type { Hour, HourSeries, SeriesSource } from './series';

/** One hour as a person gave it; null where it was not given. Humidity counts before the dew point. */
export type TypedPoint = {
  readonly at: Instant;
  readonly temperature: Kelvin;
  readonly relativeHumidity: Ratio | null;
  readonly dewPoint: Kelvin | null;
  readonly pressure: PressureGiven | null;
};

export type TypedNight = {
  readonly points: readonly TypedPoint[];
  readonly elevation: Metre;
  /** Asked once; counts where no point has a pressure of its own. */
  readonly pressure: PressureGiven;
  /** Counts where no point has a humidity of its own. */
  readonly relativeHumidity: Ratio;
  readonly stepMinutes: 60 | 30;
};

export type TypedProblem =
  | { readonly code: 'no-points' }
  | { readonly code: 'same-time'; readonly at: Instant }
  | { readonly code: 'not-air'; readonly at: Instant; readonly problem: AirProblem };

/** The source of hours that no service gave. */
export const TYPED_SOURCE: SeriesSource = {
  name: 'typed',
  attribution: '',
  attributionUrl: null,
  issuedAt: null,
  fetchedAt: null,
  modelElevation: null,
};

type Known = { readonly at: Instant; readonly value: number };

/** A curve through what is known, held at its first and last value before and after; null where nothing is known. */
function heldCurve(known: readonly Known[]): ((at: Instant) => number) | null {
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return null;
  const curve = shapePreservingCurve(known.map(({ at, value }) => ({ x: at, y: value })));
  return (at) => (at <= first.at ? first.value : at >= last.at ? last.value : (curve(at) ?? last.value));
}

const humidityOf = ({ relativeHumidity, dewPoint }: TypedPoint): Humidity | null => {
  if (relativeHumidity !== null) return { kind: 'relative', value: relativeHumidity };
  return dewPoint === null ? null : { kind: 'dew-point', value: dewPoint };
};

/** A station pressure is checked against the height of the track: a sea-level number typed there must not pass. */
function atTrack(given: PressureGiven, elevation: Metre): PressureGiven {
  return given.kind === 'station' && given.elevation === undefined ? { ...given, elevation } : given;
}

/** Air at each point: what it says itself, else what its neighbours say, else what was asked once. */
function hoursOf(points: readonly TypedPoint[], night: TypedNight): Result<readonly Hour[], TypedProblem> {
  const known: { readonly humidity: Known[]; readonly pressure: Known[] } = { humidity: [], pressure: [] };
  for (const point of points) {
    const { at, temperature } = point;
    const own = humidityOf(point);
    const humidity: Humidity = own ?? { kind: 'relative', value: night.relativeHumidity };
    const pressure = atTrack(point.pressure ?? night.pressure, night.elevation);
    const air = airFrom({ temperature, pressure, humidity });
    if (!air.ok) return fail({ code: 'not-air', at, problem: air.reason });
    if (own !== null) known.humidity.push({ at, value: air.value.relativeHumidity });
    if (point.pressure !== null) known.pressure.push({ at, value: air.value.pressure });
  }
  const humidityAt = heldCurve(known.humidity);
  const pressureAt = heldCurve(known.pressure);
  const kindAt = (at: Instant) =>
    points.findLast((point) => point.pressure !== null && point.at <= at) ??
    points.find((point) => point.pressure !== null);
  return ok(
    points.map(({ at, temperature }) => {
      const relativeHumidity = ratio(humidityAt?.(at) ?? night.relativeHumidity);
      const measured = pressureAt?.(at);
      return {
        at,
        temperature,
        relativeHumidity,
        pressure:
          measured === undefined
            ? stationPressure(night.pressure, temperature, relativeHumidity)
            : pascal(measured),
        pressureFrom: kindAt(at)?.pressure?.kind ?? night.pressure.kind,
        spread: null,
        origin: 'typed',
      };
    }),
  );
}

/** Where on the clock most points stand, so that hours between 18:20 and 21:20 stand at :20 too. */
function commonAnchor(points: readonly TypedPoint[], stepMs: number): Instant {
  const phases = points.map(({ at }) => ((at % stepMs) + stepMs) % stepMs);
  const count = (phase: number): number => phases.filter((other) => other === phase).length;
  return instant(phases.reduce((best, phase) => (count(phase) > count(best) ? phase : best), phases[0] ?? 0));
}

/**
 * A night from a few typed points: the points themselves, and hours between them on a curve that never leaves the
 * range of its two neighbours. Points more than twelve hours apart are not bridged; that gap is reported.
 */
export function typedSeries(night: TypedNight): Result<FilledSeries, TypedProblem> {
  const points = [...night.points].sort((a, b) => a.at - b.at);
  if (points.length === 0) return fail({ code: 'no-points' });
  const twice = points.find((point, i) => points[i - 1]?.at === point.at);
  if (twice !== undefined) return fail({ code: 'same-time', at: twice.at });
  const hours = hoursOf(points, night);
  if (!hours.ok) return hours;
  const series: HourSeries = { hours: hours.value, elevation: night.elevation, source: TYPED_SOURCE };
  const stepMs = night.stepMinutes * MINUTE_MS;
  return ok(
    fillGaps(series, {
      longestMs: LONGEST_BETWEEN_MS,
      stepMs,
      anchor: commonAnchor(points, stepMs),
      origin: 'between',
    }),
  );
}

/** Hours that are invented: no weather model made them, so none is wrong as raw models are. */
export const byNoModel = (series: HourSeries): HourSeries => ({
  ...series,
  hours: series.hours.map((hour) => ({ ...hour, rawModel: false })),
});
