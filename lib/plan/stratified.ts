import { normalQuantile } from './normal';
import { byRank, placesOf, uncorrelated } from './uncorrelated';

/** Inputs that share a good joint spread; the rest are stratified one by one. */
const JOINT = [2, 3, 5, 7, 11, 13, 17].map(Math.sqrt);

/** Seeded numbers in [0, 1): the sfc32 generator by C. Doty-Humphrey (public domain), 32-bit counters. */
export function seededUniform(seed: number, stream: number): () => number {
  let [a, b, c, counter] = [seed | 0, stream | 0, 0x9e3779b9 | 0, 1];
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}

/** The middle of each of n equally likely strata of the standard normal, lowest first. */
function strata(n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => normalQuantile((i + 0.5) / n));
}

function shuffled(n: number, uniform: () => number): Uint32Array {
  const order = Uint32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

/** Places of the points of one coordinate of a Richtmyer sequence, frac(shift + i √prime). */
function sequenceOrder(n: number, step: number, shift: number): Uint32Array {
  const points = Float64Array.from({ length: n }, (_, i) => (shift + i * step) % 1);
  return placesOf(points);
}

export type Normals = {
  readonly draws: number;
  /** Standard normal numbers of one input over all draws. */
  readonly input: (index: number) => Float64Array;
};

/**
 * Stratified standard normal draws: over the draws, every input takes each of its n equally likely strata exactly
 * once. The first seven inputs are spread evenly together (R. D. Richtmyer's sequence, as in H. Niederreiter, Bull. AMS
 * 84 (1978) 957) and without correlation, the others are paired at random (Latin hypercube: McKay, Beckman, Conover, Technometrics 21 (1979)
 * 239). The same seed gives the same draws.
 */
export function stratifiedNormals(draws: number, seed: number): Normals {
  if (!(Number.isInteger(draws) && draws >= 1 && draws <= 100_000))
    throw new RangeError(`the number of draws must be 1 to 100,000, got ${draws}`);
  const levels = strata(draws);
  const joint = JOINT.map((step, index) =>
    byRank(sequenceOrder(draws, step, seededUniform(seed, index + 1)()), levels),
  );
  const made = new Map(uncorrelated(joint, levels).map((column, index) => [index, column]));
  const make = (index: number) => byRank(shuffled(draws, seededUniform(seed, index + 1)), levels);
  return {
    draws,
    input(index) {
      const known = made.get(index) ?? make(index);
      made.set(index, known);
      return known;
    },
  };
}

let latest: { readonly key: string; readonly normals: Map<number, Normals> } | null = null;

/** The same draws, kept while the seed stays: they depend on nothing but their arguments. */
export function keptNormals(draws: number, seed: number): Normals {
  const key = String(seed);
  if (latest?.key !== key) latest = { key, normals: new Map() };
  const known = latest.normals.get(draws) ?? stratifiedNormals(draws, seed);
  latest.normals.set(draws, known);
  return known;
}
