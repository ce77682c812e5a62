import { dewPointOf, saturationOverWater } from '@/lib/air/saturation';
import { shapePreservingCurve } from '@/lib/hours/interpolate';
import type { HourSeries } from '@/lib/hours/series';
import { type Instant, instant } from '@/lib/time/instant';
import { type Kelvin, kelvin, pascal } from '@/lib/units/quantity';
import { type Conditioned, conditionOn, expectedError, type MeasuredError } from './conditioning';
import { pressureError, temperatureError } from './forecast-error';
import {
  DEPRESSION_SD,
  FAR_OFF_PRESSURE,
  FAR_OFF_READING,
  READING_DEPRESSION_SD,
  READING_PRESSURE_SD,
  READING_TEMPERATURE_SD,
} from './judgement';
import type { PlaceOffset } from './place-offset';
import { readingDoubt } from './pressure-doubts';
import type { PlanWarning, Reading } from './types';

/** The air at rising instants: the hours as corrected by readings, and how far off they may still be. */
export type Track = {
  readonly at: Float64Array;
  /** Posterior means [K, Pa, 1]. */
  readonly temperature: Float64Array;
  readonly pressure: Float64Array;
  readonly relativeHumidity: Float64Array;
  /** What is left of the error: sd and covariance with the next instant. */
  readonly temperatureSd: Float64Array;
  readonly temperatureToNext: Float64Array;
  /** ... and what one standard deviation of the part that stays all night moves it by. */
  readonly temperatureLasting: Float64Array;
  /** ... and the share of the sd that readings have left. */
  readonly temperatureLeft: Float64Array;
  readonly pressureSd: Float64Array;
  readonly pressureToNext: Float64Array;
  readonly pressureLasting: Float64Array;
};

export type CorrectedHours = {
  readonly trackAt: (instants: Float64Array) => Track;
  /** The temperature of the hours as they were given. */
  readonly givenAt: (at: Instant) => Kelvin;
  readonly warnings: readonly PlanWarning[];
  /** A barometer at the track has been heard. */
  readonly pressureRead: boolean;
  /** When the temperature was read last, of the readings that were heard; null: never. */
  readonly temperatureReadAt: Instant | null;
};

/** Coldest dew point the saturation curve knows [K]; air drier than that is dry. */
const COLDEST_DEW_POINT = 123;

/** Temperature minus dew point [K]. */
function depression(temperature: number, relativeHumidity: number): number {
  const vapour = pascal(relativeHumidity * saturationOverWater(kelvin(temperature)));
  return temperature - (dewPointOf(vapour) ?? COLDEST_DEW_POINT);
}

/** RH = e_w(T − depression) / e_w(T). */
function humidityAt(temperature: number, dewPointDepression: number): number {
  const dewPoint = Math.max(COLDEST_DEW_POINT, temperature - Math.max(0, dewPointDepression));
  return saturationOverWater(kelvin(dewPoint)) / saturationOverWater(kelvin(temperature));
}

/** The series as three smooth curves; values at the ends are held. */
type Curves = {
  readonly temperature: (at: number) => number;
  readonly pressure: (at: number) => number;
  readonly depression: (at: number) => number;
};

function curvesOf({ hours }: HourSeries): Curves {
  const [first, last] = [hours[0]!.at, hours.at(-1)!.at];
  const curve = (pick: (hour: HourSeries['hours'][number]) => number) => {
    const inside = shapePreservingCurve(hours.map((hour) => ({ x: hour.at - first, y: pick(hour) })));
    return (at: number) => inside(Math.min(Math.max(at, first), last) - first)!;
  };
  return {
    temperature: curve((hour) => hour.temperature),
    pressure: curve((hour) => hour.pressure),
    depression: curve((hour) => depression(hour.temperature, hour.relativeHumidity)),
  };
}

type Judged = {
  readonly temperature: readonly MeasuredError[];
  readonly pressure: readonly MeasuredError[];
  readonly depression: readonly MeasuredError[];
  readonly warnings: readonly PlanWarning[];
};

const NOTHING: Judged = { temperature: [], pressure: [], depression: [], warnings: [] };

const AT_THE_TRACK = { temperature: READING_TEMPERATURE_SD, pressure: READING_PRESSURE_SD };

/**
 * What sets a station apart from the track stays through the night, so what it observed n times tells as much as once:
 * each time with n times the variance.
 */
function withStationsOnce(readings: readonly Reading[]): readonly Reading[] {
  return readings.map((reading) => {
    const { from, sd } = reading;
    if (from === undefined || sd === undefined) return reading;
    const times = Math.sqrt(readings.filter((other) => other.from === from).length);
    return { ...reading, sd: { temperature: sd.temperature * times, pressure: sd.pressure * times } };
  });
}

/** What one reading says against the hours, or why it is not heard. */
function judge(reading: Reading, series: HourSeries, curves: Curves): Judged {
  const { at, id, sd = AT_THE_TRACK } = reading;
  const { hours } = series;
  if (at < hours[0]!.at || at > hours.at(-1)!.at)
    return { ...NOTHING, warnings: [{ code: 'reading-outside-hours', readingId: id }] };
  const confirmed = reading.confirmed ?? false;
  const off = reading.temperature - curves.temperature(at);
  if (Math.abs(off) > FAR_OFF_READING && !confirmed)
    return { ...NOTHING, warnings: [{ code: 'reading-far-off', readingId: id, difference: off }] };
  const pressureOff = reading.stationPressure === null ? null : reading.stationPressure - curves.pressure(at);
  const pressureWarning =
    confirmed || pressureOff === null ? null : pressureQuestion(reading, series, pressureOff);
  const drier =
    reading.relativeHumidity === null
      ? null
      : depression(reading.temperature, reading.relativeHumidity) - curves.depression(at);
  return {
    temperature: [{ at, value: off, sd: sd.temperature }],
    pressure:
      pressureOff === null || pressureWarning !== null ? [] : [{ at, value: pressureOff, sd: sd.pressure }],
    depression:
      drier === null ? [] : [{ at, value: drier, sd: Math.max(READING_DEPRESSION_SD, sd.temperature) }],
    warnings: pressureWarning === null ? [] : [pressureWarning],
  };
}

/** What must be asked about a barometer before it is heard; null where nothing must. */
function pressureQuestion(reading: Reading, series: HourSeries, difference: number): PlanWarning | null {
  const readingId = reading.id;
  const doubt = readingDoubt(reading, series, difference);
  if (doubt !== null) return { code: 'reading-pressure-in-doubt', readingId, difference, doubt };
  return Math.abs(difference) > FAR_OFF_PRESSURE
    ? { code: 'reading-pressure-far-off', readingId, difference }
    : null;
}

export type ReadingsRequest = {
  readonly series: HourSeries;
  readonly readings: readonly Reading[];
  readonly now: Instant;
  readonly placeOffset?: PlaceOffset;
};

/** What each reading says against the hours, in the order of time. */
function judgedReadings(
  { series, readings }: Pick<ReadingsRequest, 'series' | 'readings'>,
  curves: Curves,
): readonly Judged[] {
  const sorted = [...withStationsOnce(readings)].sort((a, b) => a.at - b.at);
  return sorted.map((reading) => judge(reading, series, curves));
}

/** How far the temperatures read lie from the hours [K], of all readings that can be heard, in the order of time. */
export function temperaturesRead(
  request: Pick<ReadingsRequest, 'series' | 'readings'>,
): readonly MeasuredError[] {
  if (request.readings.length === 0) return [];
  return judgedReadings(request, curvesOf(request.series)).flatMap((each) => each.temperature);
}

/**
 * The hours as the readings correct them. The error of the hours is conditioned on every reading exactly, always
 * against the series that is given: a new forecast starts from its own errors and nothing is stacked.
 *
 * Temperature and dew point are corrected, never humidity by itself. A temperature read alone moves the dew point with
 * it: the air cools at the ground and hands its water to frost, so the depression outlasts the temperature, and a
 * dew point held fixed would leave colder air more than saturated. A humidity that was read corrects the depression
 * on its own.
 */
export function correctHours(request: ReadingsRequest): CorrectedHours {
  const curves = curvesOf(request.series);
  const judged = judgedReadings(request, curves);
  const temperatureProcess = temperatureError(request);
  const temperature = judged.flatMap((each) => each.temperature);
  const pressure = judged.flatMap((each) => each.pressure);
  const lastRead = temperature.at(-1)?.at;
  return {
    trackAt: trackFrom(curves, {
      temperature: conditionOn(temperatureProcess, temperature),
      pressure: conditionOn(pressureError(request), pressure),
      depression: expectedError(
        { ...temperatureProcess, mean: () => 0, sd: () => DEPRESSION_SD },
        judged.flatMap((each) => each.depression),
      ),
    }),
    givenAt: (at) => kelvin(curves.temperature(at)),
    warnings: judged.flatMap((each) => each.warnings),
    pressureRead: pressure.length > 0,
    temperatureReadAt: lastRead === undefined ? null : instant(lastRead),
  };
}

type Errors = {
  readonly temperature: Conditioned;
  readonly pressure: Conditioned;
  /** Of the depression its mean alone is asked for. */
  readonly depression: (instants: Float64Array) => Float64Array;
};

function trackFrom(curves: Curves, errors: Errors): (instants: Float64Array) => Track {
  return (at) => {
    const warmer = errors.temperature(at);
    const higher = errors.pressure(at);
    const drier = errors.depression(at);
    const temperature = new Float64Array(at.length);
    const pressure = new Float64Array(at.length);
    const relativeHumidity = new Float64Array(at.length);
    for (let i = 0; i < at.length; i++) {
      const t = at[i]!;
      temperature[i] = curves.temperature(t) + warmer.mean[i]!;
      pressure[i] = curves.pressure(t) + higher.mean[i]!;
      relativeHumidity[i] = humidityAt(temperature[i]!, curves.depression(t) + drier[i]!);
    }
    return {
      at,
      temperature,
      pressure,
      relativeHumidity,
      temperatureSd: warmer.sd,
      temperatureToNext: warmer.toNext,
      temperatureLasting: warmer.lasting,
      temperatureLeft: warmer.left,
      pressureSd: higher.sd,
      pressureToNext: higher.toNext,
      pressureLasting: higher.lasting,
    };
  };
}
