import { airAt } from '@/lib/air/air-from';
import { fillDensities } from '@/lib/air/batch';
import { intakeAir } from '@/lib/carb/intake';
import type { Machine } from '@/lib/carb/machine';
import { logNeed } from '@/lib/carb/need';
import { airShift, logAreaOf } from '@/lib/carb/response';
import type { HourSeries } from '@/lib/hours/series';
import { type ErrorProcess, pressureError, temperatureError } from '@/lib/plan/forecast-error';
import { correctHours } from '@/lib/plan/readings';
import { seededUniform } from '@/lib/plan/stratified';
import type { PlanRequest, Reading } from '@/lib/plan/types';
import { addMinutes, HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { hectopascalToPascal } from '@/lib/units/convert';
import { density, kelvin, kelvinDifference, pascal, ratio } from '@/lib/units/quantity';
import { gaussian } from './plain-draws';
import { DUSK, machineOf, requestOf, runsOf, seriesOf } from './plan-cases';

/** What one simulated night really was: the ideal log area at any of its instants. */
export type TrueNight = { readonly at: Float64Array; readonly ideal: Float64Array };

export type SimulatedNight = { readonly request: PlanRequest; readonly truth: TrueNight };

/** How the truth of a simulated night strays from its forecast, at rising instants. */
export type Straying = (
  process: ErrorProcess,
  at: readonly number[],
  next: () => number,
) => readonly number[];

/** One path of an error process, step by step from its own definition: the planner's stated law. */
export const asStated: Straying = (process, at, next) => {
  const stays = Math.sqrt(process.lasting) * next();
  const wanders = Math.sqrt(1 - process.lasting);
  let z = next();
  return at.map((t, j) => {
    if (j > 0) {
      const kept = Math.exp(-(process.clock(t) - process.clock(at[j - 1]!)));
      z = kept * z + Math.sqrt(1 - kept * kept) * next();
    }
    return process.mean(t) + process.sd(t) * (stays + wanders * z);
  });
};

/** The forecast of an invented night: it cools after dusk, and comes back or not. */
function forecast(uniform: () => number): HourSeries {
  const length = 11 + Math.floor(uniform() * 6);
  const [start, fall, turn] = [-18 + 22 * uniform(), 2 + 14 * uniform(), 5 + 9 * uniform()];
  const celsius = Array.from({ length }, (_, i) => start - fall * Math.sin(((i / turn) * Math.PI) / 2));
  const spread = uniform() < 0.3 ? kelvinDifference(0.5 + 2 * uniform()) : null;
  const series = seriesOf(celsius, { spread, pressure: hectopascalToPascal(940 + 70 * uniform()) });
  const issuedAt = instant(DUSK - Math.round(30 * uniform()) * HOUR_MS);
  return { ...series, source: { ...series.source, issuedAt } };
}

/** An engine whose baseline was proven in air up to 14 K warmer and 8 K colder than the middle of the night's. */
export function inventedMachine(uniform: () => number, series: HourSeries): Machine {
  const middle = series.hours[Math.floor(series.hours.length / 2)]!;
  const carburettors = 1 + Math.floor(uniform() * 3);
  const offset = kelvinDifference(Math.floor(uniform() * 3) * 4);
  return machineOf({
    carburettors: Array.from({ length: carburettors }, (_, i) => ({ main: 420 - 10 * (i % 2) })),
    box: Array.from({ length: 17 }, (_, i) => ({ size: 360 + 10 * i, count: 3 })),
    intakeOffset: offset,
    baselineIntakeOffset: offset,
    baselineAir: airAt({
      temperature: kelvin(middle.temperature - 8 + 22 * uniform()),
      pressure: pascal(middle.pressure - 1500 + 3000 * uniform()),
      relativeHumidity: ratio(0.7),
      pressureFrom: 'station',
    }),
  });
}

/** The ideal log area of a machine in the air as it really was, with the response it really has. */
export function trueIdeals(
  machine: Machine,
  air: {
    readonly temperature: Float64Array;
    readonly pressure: Float64Array;
    readonly relativeHumidity: Float64Array;
  },
  next: () => number,
): Float64Array {
  const { response } = machine;
  const [z1, z2] = [next(), next()];
  const across = Math.sqrt(1 - response.correlation ** 2);
  const exponents = {
    pressure: response.pressureExponent + response.pressureSd * z1,
    temperature:
      response.temperatureExponent + response.temperatureSd * (response.correlation * z1 + across * z2),
  };
  const baseline = intakeAir(machine.baselineAir, machine.baselineIntakeOffset);
  const warmed = air.temperature.map((_, i) => {
    const ambient = airAt({
      temperature: kelvin(air.temperature[i]!),
      pressure: pascal(air.pressure[i]!),
      relativeHumidity: ratio(air.relativeHumidity[i]!),
      pressureFrom: 'station',
    });
    return machine.intakeOffset === 0
      ? ambient.relativeHumidity
      : intakeAir(ambient, machine.intakeOffset).relativeHumidity;
  });
  const temperature = air.temperature.map((t) => t + machine.intakeOffset);
  const out = { density: new Float64Array(warmed.length), dryDensity: new Float64Array(warmed.length) };
  fillDensities({ temperature, pressure: air.pressure, relativeHumidity: warmed }, out);
  return temperature.map((t, i) => {
    const breathed = {
      density: density(out.density[i]!),
      dryDensity: density(out.dryDensity[i]!),
      temperature: kelvin(t),
      pressure: pascal(air.pressure[i]!),
    };
    return logAreaOf(airShift(breathed, baseline, logNeed(breathed, baseline)), exponents);
  });
}

/** Readings of the true air at three random moments before the runs, each with its instrument's own error. */
function readingTimes(uniform: () => number): readonly number[] {
  const count = Math.floor(uniform() * 4);
  return Array.from({ length: count }, () => DUSK + Math.round(uniform() * 100) * MINUTE_MS).sort(
    (a, b) => a - b,
  );
}

/** What may differ from the planner's own world. */
export type OtherWorld = {
  /** How the temperature really strays. */
  readonly straying?: Straying;
  /** The hours as the planner is told them, and as they really are. */
  readonly told?: (series: HourSeries) => HourSeries;
  readonly truly?: (series: HourSeries) => HourSeries;
  /** What the truth is off by on top of that [K], at an instant. */
  readonly colder?: (series: HourSeries, now: Instant) => (at: number) => number;
};

export const asForeseen: NonNullable<OtherWorld['colder']> = () => () => 0;

const asItIs = (series: HourSeries): HourSeries => series;

/**
 * A night whose truth is drawn from the planner's own stated error process: forecast plus a path of the error, readings
 * taken from that truth. If the planner's chances mean what they say, they come true in this world.
 */
export function simulatedNight(seed: number, world: OtherWorld = {}): SimulatedNight {
  const uniform = seededUniform(seed, 99);
  const next = gaussian(seed);
  const { straying = asStated, told = asItIs, truly = asItIs, colder = asForeseen } = world;
  const given = forecast(uniform);
  const series = told(given);
  const machine = inventedMachine(uniform, series);
  const every = 20 + Math.round(uniform() * 40);
  const last = series.hours.at(-1)!.at;
  const runs = runsOf({ first: 19.1, every, count: 12 }).filter(({ end }) => end <= last);
  const now = addMinutes(DUSK, 100);
  const times = readingTimes(uniform);
  const grid = Array.from(
    { length: Math.round((last - DUSK) / (15 * MINUTE_MS)) + 1 },
    (_, i) => DUSK + i * 15 * MINUTE_MS,
  );
  const inRuns = runs.flatMap(({ start, end }) => [start as number, end as number]);
  const at = [...new Set([...grid, ...inRuns, ...times])].sort((a, b) => a - b);
  const error = { series, now };
  const { mean } = temperatureError(error);
  const foretold = correctHours({ ...error, readings: [] }).trackAt(Float64Array.from(at));
  const bias = colder(given, now);
  const strayed = straying(temperatureError({ series: truly(given), now }), at, next);
  const warmer = strayed.map((each, i) => each + bias(at[i]!));
  const higher = asStated(pressureError(error), at, next);
  // The track without readings has the stated mean in it; what strays is counted from the hours themselves.
  const temperature = foretold.temperature.map((t, i) => t - mean(at[i]!) + warmer[i]!);
  const pressure = foretold.pressure.map((p, i) => p + higher[i]!);
  const readings = times.map((time, i): Reading => {
    const j = at.indexOf(time);
    return {
      id: `r${i}`,
      at: instant(time),
      temperature: kelvin(temperature[j]! + 0.5 * next()),
      stationPressure: uniform() < 0.3 ? pascal(pressure[j]! + 50 * next()) : null,
      relativeHumidity: null,
      confirmed: true,
    };
  });
  const ideal = trueIdeals(
    machine,
    { temperature, pressure, relativeHumidity: foretold.relativeHumidity },
    next,
  );
  return {
    request: requestOf({ machine, runs, series, now, readings }),
    truth: { at: foretold.at, ideal },
  };
}
