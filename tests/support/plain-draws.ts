import { fillDensities } from '@/lib/air/batch';
import { enhancementFactor } from '@/lib/air/density';
import { saturationOverWater } from '@/lib/air/saturation';
import { intakeAir } from '@/lib/carb/intake';
import type { Machine } from '@/lib/carb/machine';
import { logNeed } from '@/lib/carb/need';
import { airShift, logAreaOf } from '@/lib/carb/response';
import type { Track } from '@/lib/plan/readings';
import { seededUniform } from '@/lib/plan/stratified';
import { density, kelvin, pascal } from '@/lib/units/quantity';

/** Standard normal numbers by Box & Muller, Ann. Math. Stat. 29 (1958) 610. */
export function gaussian(seed: number): () => number {
  const uniform = seededUniform(seed, 4242);
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}

/** A vector of standard normal numbers for every draw; the same memory each time. */
type NormalVectors = (draw: number) => Float64Array;

/** Independent vectors, drawn one after the other. */
function plainNormals(dimensions: number, seed: number): NormalVectors {
  const next = gaussian(seed);
  const normals = new Float64Array(dimensions);
  return () => normals.fill(0).map(next);
}

/** The first numbers that are products of no others, for as many dimensions as are asked for. */
function primes(count: number): readonly number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((prime) => n % prime !== 0)) found.push(n);
  return found;
}

/** Up to as many dimensions the draws are even. */
const MOST_EVEN = 12;

/**
 * Standard normal vectors that fill their space evenly: the fractions of n √p for the first primes p, turned into
 * normals two by two as above. For chances of smooth sets the error falls nearly as 1/n and not as 1/√n.
 *
 * Source: R. D. Richtmyer, The evaluation of definite integrals, and a quasi-Monte-Carlo method based on the properties
 * of algebraic numbers, LA-1342, Los Alamos (1951).
 */
function evenNormals(dimensions: number): NormalVectors {
  const pairs = Math.ceil(dimensions / 2);
  const roots = primes(2 * pairs).map(Math.sqrt);
  const normals = new Float64Array(2 * pairs);
  const fraction = (draw: number, k: number) => ((draw + 0.5) * roots[k]!) % 1;
  return (draw) => {
    for (let k = 0; k < normals.length; k += 2) {
      const radius = Math.sqrt(-2 * Math.log(1 - fraction(draw, k)));
      const angle = 2 * Math.PI * fraction(draw, k + 1);
      normals[k] = radius * Math.cos(angle);
      normals[k + 1] = radius * Math.sin(angle);
    }
    return normals;
  };
}

/** Lower triangle L with L Lᵀ = the matrix. */
export function rootOf(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const rows: number[][] = [];
  for (let i = 0; i < matrix.length; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= row[k]! * (rows[j]?.[k] ?? row[k]!);
      row.push(j === i ? Math.sqrt(Math.max(sum, 0)) : sum / rows[j]![j]!);
    }
    rows.push(row);
  }
  return rows;
}

/** Air at some instants: means, and the covariances of the errors of temperature and pressure. */
export type PlainAir = {
  readonly temperature: readonly number[];
  readonly pressure: readonly number[];
  readonly relativeHumidity: readonly number[];
  readonly temperatureCovariance: readonly (readonly number[])[];
  readonly pressureCovariance: readonly (readonly number[])[];
};

/**
 * The ideal log area at the instants, in each of many draws, by the carburettor's own formulas and with no short cut.
 * The same memory is handed over each time.
 */
export function plainIdeals(
  machine: Machine,
  air: PlainAir,
  given: { readonly draws: number; readonly each: (ideals: Float64Array, draw: number) => void },
): void {
  const { draws } = given;
  const count = air.temperature.length;
  const dimensions = 2 * count + 3;
  // Evenness is lost in very many dimensions.
  const normalsOf = dimensions <= MOST_EVEN ? evenNormals(dimensions) : plainNormals(dimensions, 35);
  const [rootT, rootP] = [rootOf(air.temperatureCovariance), rootOf(air.pressureCovariance)];
  const wander = (root: readonly (readonly number[])[], z: Float64Array, out: Float64Array) => {
    for (let j = 0; j < count; j++) {
      let sum = 0;
      for (let k = 0; k <= j; k++) sum += root[j]![k]! * z[k]!;
      out[j] = sum;
    }
  };
  const [eT, eP] = [new Float64Array(count), new Float64Array(count)];
  const baseline = intakeAir(machine.baselineAir, machine.baselineIntakeOffset);
  const { response } = machine;
  const ideals = new Float64Array(count);
  const temperature = new Float64Array(count);
  const pressure = new Float64Array(count);
  const relativeHumidity = new Float64Array(count);
  const out = { density: new Float64Array(count), dryDensity: new Float64Array(count) };
  for (let s = 0; s < draws; s++) {
    const normals = normalsOf(s);
    const [z1, z2, z3] = normals as unknown as readonly [number, number, number];
    wander(rootT, normals.subarray(3, 3 + count), eT);
    wander(rootP, normals.subarray(3 + count), eP);
    for (let j = 0; j < count; j++) {
      const ambient = air.temperature[j]! + eT[j]!;
      temperature[j] = ambient + machine.intakeOffset;
      pressure[j] = air.pressure[j]! + eP[j]!;
      const saturated = (t: number) =>
        saturationOverWater(kelvin(t)) * enhancementFactor(kelvin(t), pascal(pressure[j]!));
      const humidity = air.relativeHumidity[j]!;
      relativeHumidity[j] =
        machine.intakeOffset === 0
          ? humidity
          : Math.min(1, (humidity * saturated(ambient)) / saturated(temperature[j]!));
    }
    fillDensities({ temperature, pressure, relativeHumidity }, out);
    const exponents = {
      pressure: response.pressureExponent + response.pressureSd * z1,
      temperature:
        response.temperatureExponent +
        response.temperatureSd * (response.correlation * z1 + Math.sqrt(1 - response.correlation ** 2) * z2),
    };
    const shift = (machine.baselineShift?.log ?? 0) + (machine.baselineShift?.sd ?? 0) * z3;
    for (let j = 0; j < count; j++) {
      // Written out: a spread here took most of the time of all draws.
      const breathed = {
        density: density(out.density[j]!),
        dryDensity: density(out.dryDensity[j]!),
        temperature: kelvin(temperature[j]!),
        pressure: pascal(pressure[j]!),
      };
      ideals[j] = shift + logAreaOf(airShift(breathed, baseline, logNeed(breathed, baseline)), exponents);
    }
    given.each(ideals, s);
  }
}

/** Highest and lowest ideal log area over the instants, in each of many draws: what chances are checked against. */
export function plainExtremes(machine: Machine, air: PlainAir, draws: number) {
  const highest = new Float64Array(draws);
  const lowest = new Float64Array(draws);
  plainIdeals(machine, air, {
    draws,
    each(ideals, s) {
      highest[s] = Math.max(...ideals);
      lowest[s] = Math.min(...ideals);
    },
  });
  return { highest, lowest };
}

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

/** The air of a track, as plain draws want it. */
export function plainAir(track: Track): PlainAir {
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
