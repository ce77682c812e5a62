import { describe, expect, it } from 'vitest';
import { airAt } from '@/lib/air/air-from';
import type { Machine } from '@/lib/carb/machine';
import { logIdealArea } from '@/lib/carb/response';
import { causesAt, causesSd, machineNeed, meanLogIdeal } from '@/lib/plan/machine-need';
import { prepareNight } from '@/lib/plan/night';
import { normalBelow } from '@/lib/plan/normal';
import type { Track } from '@/lib/plan/readings';
import { chanceAbove, chanceBelow, levelAbove } from '@/lib/plan/run-odds';
import { chanceOver, levelAt, spreadAt } from '@/lib/plan/spread';
import type { PlanRequest } from '@/lib/plan/types';
import { viewOf } from '@/lib/plan/view';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, ratio } from '@/lib/units/quantity';
import { type PlainAir, plainExtremes } from '@/tests/support/plain-draws';
import { clock, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';

type Errors = { readonly sd: Float64Array; readonly toNext: Float64Array; readonly lasting: Float64Array };

/**
 * An error's whole covariance from neighbours: what stays all night, l_i l_k, and a Markov rest,
 * cov(i, k) = Π cov(j, j+1) / Π var(j) in between.
 */
function covarianceOf({ sd, toNext, lasting }: Errors): readonly (readonly number[])[] {
  const stays = (i: number, k: number) => lasting[i]! * lasting[k]!;
  const variance = (j: number) => sd[j]! ** 2 - stays(j, j);
  const between = (i: number, k: number): number => {
    if (i > k) return between(k, i);
    let value = variance(i);
    for (let j = i; j < k; j++) value *= (toNext[j]! - stays(j, j + 1)) / variance(j);
    return value;
  };
  return Array.from(sd, (_, i) => Array.from(sd, (__, k) => stays(i, k) + between(i, k)));
}

function plainAir(track: Track): PlainAir {
  return {
    temperature: [...track.temperature],
    pressure: [...track.pressure],
    relativeHumidity: [...track.relativeHumidity],
    temperatureCovariance: covarianceOf({
      sd: track.temperatureSd,
      toNext: track.temperatureToNext,
      lasting: track.temperatureLasting,
    }),
    pressureCovariance: covarianceOf({
      sd: track.pressureSd,
      toNext: track.pressureToNext,
      lasting: track.pressureLasting,
    }),
  };
}

const READ = {
  id: 'r1',
  at: clock(18),
  temperature: celsiusToKelvin(-8.2),
  stationPressure: hectopascalToPascal(984.2),
  relativeHumidity: null,
};

const HOT = seriesOf([31, 29, 27, 25, 23.5, 22, 21, 20], { relativeHumidity: ratio(0.85) });
const SUMMER: Partial<Machine> = {
  intakeOffset: kelvinDifference(8),
  baselineIntakeOffset: kelvinDifference(5),
  baselineAir: airAt({
    temperature: celsiusToKelvin(22),
    pressure: hectopascalToPascal(985),
    relativeHumidity: ratio(0.5),
    pressureFrom: 'station',
  }),
};

type Case = { readonly name: string; readonly request: PlanRequest };

const ONE_RUN = runsOf({ first: 22, every: 60, count: 1 });
const CASES: readonly Case[] = [
  { name: 'a run of ten minutes', request: requestOf({ runs: ONE_RUN }) },
  {
    name: 'a run an hour after a reading at the track',
    request: requestOf({ runs: runsOf({ first: 19, every: 60, count: 1 }), readings: [READ] }),
  },
  {
    name: 'a run far from the baseline, whose own error counts too',
    request: requestOf({
      runs: ONE_RUN,
      machine: machineOf({
        intakeOffset: kelvinDifference(20),
        baselineShift: { log: 0.012, sd: 0.01 },
        baselineAir: airAt({
          temperature: celsiusToKelvin(18),
          pressure: hectopascalToPascal(930),
          relativeHumidity: ratio(0.4),
          pressureFrom: 'station',
        }),
      }),
    }),
  },
  {
    name: 'a run on a warm and humid evening',
    request: requestOf({ runs: ONE_RUN, series: HOT, machine: machineOf(SUMMER) }),
  },
  {
    name: 'a ride of eight hours',
    request: requestOf({ runs: [{ ...ONE_RUN[0]!, start: clock(19), end: clock(27) }] }),
  },
];

/** Even draws at a run's one or two instants are as good as ... */
const DRAWS = 65_536;
/**
 * ... so many plain ones: from what two million even draws give they differ by 0.5 standard errors of this many on
 * average (plain draws: 0.8), over the four cases and four shares below.
 */
const AS_GOOD_AS = 200_000;
/** A ride has 33 instants, too many dimensions for even draws. */
const RIDE_DRAWS = 50_000;

/** Three standard errors of plain draws, and what 64 stratified draws leave: 2 % of a chance, 4 % on a long ride. */
function tolerance(share: number, ride: boolean): number {
  return (
    3 * Math.sqrt((share * (1 - share)) / (ride ? RIDE_DRAWS : AS_GOOD_AS)) + (ride ? 0.04 : 0.02) * share
  );
}

describe('The chance of lean', () => {
  for (const { name, request } of CASES) {
    it(`agrees with tens of thousands of draws in ${name}`, () => {
      const night = prepareNight(request);
      const odds = viewOf(request.machine, night).odds[0]!;
      const air = plainAir(night.windows[0]!.track);
      const ride = air.temperature.length > 10;
      const draws = ride ? RIDE_DRAWS : DRAWS;
      const { highest, lowest } = plainExtremes(request.machine, air, draws);
      for (const share of [0.01, 0.05, 0.2, 0.5]) {
        const threshold = levelAbove(odds, share);
        const above = highest.filter((ideal) => ideal > threshold).length / draws;
        expect(Math.abs(above - share), `above at ${share}: ${above}`).toBeLessThan(tolerance(share, ride));
        const below = lowest.filter((ideal) => ideal < threshold).length / draws;
        const claimed = chanceBelow(odds, threshold);
        const allowed = tolerance(Math.max(below, 1 - below), ride);
        expect(Math.abs(below - claimed), `below at ${share}: ${below}, ${claimed}`).toBeLessThan(allowed);
      }
    }, 60_000);
  }

  it('is the normal integral where a run is a single instant and the response is known', () => {
    const known = machineOf({
      response: {
        pressureExponent: 0.65,
        temperatureExponent: 0.65,
        pressureSd: 1e-6,
        temperatureSd: 1e-6,
        correlation: 0,
      },
    });
    const request = requestOf({ machine: known, runs: [{ ...ONE_RUN[0]!, end: ONE_RUN[0]!.start }] });
    const night = prepareNight(request);
    const { odds, need, breathed } = viewOf(known, night);
    const curve = breathed.windows[0]!;
    const sd = causesSd(causesAt(need, { curve, track: night.windows[0]!.track, i: 0 }));
    const mean = meanLogIdeal(need, curve)[0]!;
    // Left over is the bend of the density curve: ½ (2 K/259 K)² × 0.65 is 2e-5, 0.4 % of a spread of 5e-3.
    for (const z of [-2, -1, 0, 0.5, 1, 1.6449, 2, 2.5])
      expect(Math.abs(chanceAbove(odds[0]!, mean + z * sd) - normalBelow(-z)), `z = ${z}`).toBeLessThan(
        0.002,
      );
  });

  it('at an instant, and the fan of the ideal, agree with tens of thousands of draws', () => {
    for (const { request } of CASES.slice(0, 4)) {
      const night = prepareNight(request);
      const { need, breathed } = viewOf(request.machine, night);
      const i = 4;
      const [curve, track] = [breathed.hours, night.hours];
      const spread = spreadAt(need, { curve, track, i, mean: meanLogIdeal(need, curve)[i]! });
      const air: PlainAir = {
        temperature: [track.temperature[i]!],
        pressure: [track.pressure[i]!],
        relativeHumidity: [track.relativeHumidity[i]!],
        temperatureCovariance: [[track.temperatureSd[i]! ** 2]],
        pressureCovariance: [[track.pressureSd[i]! ** 2]],
      };
      const { highest } = plainExtremes(request.machine, air, DRAWS);
      // One parabola stands for five causes here, in the picture only; its tail is good to 0.2 %.
      for (const z of [-1.2816, 0, 1, 1.6449, 2.3263]) {
        const level = levelAt(spread, z);
        const above = highest.filter((ideal) => ideal > level).length / DRAWS;
        expect(chanceOver(spread, level)).toBeCloseTo(normalBelow(-z), 9);
        expect(Math.abs(above - normalBelow(-z)), `z = ${z}`).toBeLessThan(0.003);
      }
    }
  }, 60_000);

  it('rests on the ideal area of the carburettor model', () => {
    for (const { request } of CASES) {
      const night = prepareNight(request);
      const { machine } = request;
      const view = viewOf(machine, night);
      const means = meanLogIdeal(machineNeed(machine), view.breathed.hours);
      for (const [i, air] of night.hourAirs.entries()) {
        expect(means[i]).toBeCloseTo(logIdealArea(machine, air), 6);
        const at = { curve: view.breathed.hours, track: night.hours, i };
        const colder = airAt({ ...air, temperature: celsiusToKelvin(air.temperature - 273.15 - 0.5) });
        const slope = (means[i]! - logIdealArea(machine, colder)) / 0.5;
        // A chord over half a kelvin against a slope: the bend leaves a hundredth.
        const perSd = causesAt(view.need, at).temperature / night.hours.temperatureSd[i]!;
        expect(Math.abs(perSd - slope)).toBeLessThan(0.012 * Math.abs(slope));
      }
    }
  });
});

describe('The level that is passed with a given chance', () => {
  it('is passed with that chance', () => {
    const request = requestOf({ runs: ONE_RUN, series: seriesOf([-3, -3, -3, -3, -3, -3, -3]) });
    const odds = viewOf(request.machine, prepareNight(request)).odds[0]!;
    for (const chance of [0.001, 0.05, 0.5, 0.95])
      expect(chanceAbove(odds, levelAbove(odds, chance))).toBeCloseTo(chance, 6);
  });
});
