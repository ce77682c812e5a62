import type { Machine } from '@/lib/carb/machine';
import type { HourSeries } from '@/lib/hours/series';
import { pressureError, temperatureError } from '@/lib/plan/forecast-error';
import { READING_TEMPERATURE_SD } from '@/lib/plan/judgement';
import { correctHours } from '@/lib/plan/readings';
import { seededUniform } from '@/lib/plan/stratified';
import type { PlanRequest, Reading, Run } from '@/lib/plan/types';
import { addMinutes, HOUR_MS, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { kelvin, pascal } from '@/lib/units/quantity';
import { gaussian } from '@/tests/support/plain-draws';
import { DUSK, requestOf } from '@/tests/support/plan-cases';
import {
  asForeseen,
  asStated,
  inventedMachine,
  type OtherWorld,
  trueIdeals,
} from '@/tests/support/simulated-nights';
import { REAL_NIGHTS } from './real-nights';

/** A night of the season: hours that were, a forecast of them that was drawn, an engine that was invented. */
export type DrawnNight = {
  /** As it stands before the first run: nothing fitted, read or accepted. */
  readonly request: PlanRequest;
  readonly machine: Machine;
  readonly runs: readonly Run[];
  /** The ideal log area at every minute of every run, by run. */
  readonly ideals: readonly Float64Array[];
  /** What a thermometer at the track would say so long before a run. */
  readonly readingBefore: (run: number, minutes: number) => Reading;
};

const RUN_MINUTES = 10;

/** The first an hour after the hours begin, one every three quarters of an hour, up to twelve. */
function runsIn({ hours }: HourSeries): readonly Run[] {
  const end = hours.at(-1)!.at;
  return Array.from({ length: 12 }, (_, i) => {
    const start = addMinutes(hours[0]!.at, 60 + 45 * i);
    const [name, last] = [`Round ${i + 1}`, addMinutes(start, RUN_MINUTES)];
    return { name, start, end: last, weight: 1, typicalSeconds: null };
  }).filter((run) => run.end <= end);
}

/** How often the forecast is put into its own error's law, whose size goes by the forecast. */
const ROUNDS = 4;

/** A forecast from which the hours that were stray as a world has it; the same numbers are drawn in every round. */
function forecastOf(
  real: HourSeries,
  world: OtherWorld,
  at: { readonly now: Instant; readonly seed: number },
) {
  const {
    straying = asStated,
    told = (given) => given,
    truly = (given) => given,
    colder = asForeseen,
  } = world;
  const times = real.hours.map((each) => each.at as number);
  let given = real;
  for (let round = 0; round < ROUNDS; round++) {
    const next = gaussian(at.seed);
    const bias = colder(given, at.now);
    const strayed = straying(temperatureError({ series: truly(given), now: at.now }), times, next);
    const warmer = strayed.map((each, i) => each + bias(times[i]!));
    const higher = asStated(pressureError({ series: given, now: at.now }), times, next);
    const hours = real.hours.map((each, i) => ({
      ...each,
      temperature: kelvin(each.temperature - warmer[i]!),
      pressure: pascal(each.pressure - higher[i]!),
    }));
    given = { ...real, hours };
  }
  return told(given);
}

export function drawNight(seed: number, world: OtherWorld): DrawnNight {
  const uniform = seededUniform(seed, 77);
  const night = REAL_NIGHTS[Math.floor(uniform() * REAL_NIGHTS.length)]!;
  const issuedAt = instant(DUSK - Math.round(30 * uniform()) * HOUR_MS);
  const real = { ...night, source: { ...night.source, issuedAt } };
  const runs = runsIn(real);
  const series = forecastOf(real, world, { now: DUSK, seed });
  const machine = inventedMachine(uniform, series);
  const truth = correctHours({ series: real, readings: [], now: DUSK });
  const minutes = runs.flatMap(({ start }) =>
    Array.from({ length: RUN_MINUTES + 1 }, (_, i) => start + i * MINUTE_MS),
  );
  const all = trueIdeals(machine, truth.trackAt(Float64Array.from(minutes)), gaussian(seed + 1e6));
  const wrong = gaussian(seed + 2e6);
  const off = runs.map(() => READING_TEMPERATURE_SD * wrong());
  return {
    request: requestOf({ machine, runs, series, now: DUSK }),
    machine,
    runs,
    ideals: runs.map((_, i) => all.subarray(i * (RUN_MINUTES + 1), (i + 1) * (RUN_MINUTES + 1))),
    readingBefore: (run, before) => {
      const at = addMinutes(runs[run]!.start, -before);
      const { temperature } = truth.trackAt(Float64Array.of(at));
      return {
        id: `r${run}`,
        at,
        temperature: kelvin(temperature[0]! + off[run]!),
        stationPressure: null,
        relativeHumidity: null,
        confirmed: true,
      };
    },
  };
}
