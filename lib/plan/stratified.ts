import { normalQuantile } from './normal';

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

/** Values by rank: draw i gets the stratum of its place among all draws. */
function byRank(order: Uint32Array, levels: Float64Array): Float64Array {
  const column = new Float64Array(order.length);
  for (let place = 0; place < order.length; place++) column[order[place]!] = levels[place]!;
  return column;
}

function shuffled(n: number, uniform: () => number): Uint32Array {
  const order = Uint32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

/** A random order in which the last draw has the stratum opposite to the first's, and so on inwards. */
function mirroredOrder(n: number, uniform: () => number): Uint32Array {
  const order = Uint32Array.from({ length: n }, (_, i) => i);
  for (const [i, place] of shuffled(n >> 1, uniform).entries()) {
    const at = uniform() < 0.5 ? place : n - 1 - place;
    order[at] = i;
    order[n - 1 - at] = n - 1 - i;
  }
  return order;
}

/** Places of the points of one coordinate of a Richtmyer sequence, frac(shift + i √prime), and of their mirror images. */
function sequenceOrder(n: number, step: number, shift: number): Uint32Array {
  const half = n >> 1;
  const points = new Float64Array(n).fill(0.5);
  for (let i = 0; i < half; i++) {
    points[i] = (shift + i * step) % 1;
    points[n - 1 - i] = 1 - points[i]!;
  }
  return Uint32Array.from({ length: n }, (_, i) => i).sort((i, j) => points[i]! - points[j]! || i - j);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let s = 0; s < a.length; s++) sum += a[s]! * b[s]!;
  return sum;
}

/** Takes out of a column what it has in common with others, and gives it a mean square of 1. Changes the column. */
function straighten(column: Float64Array, others: readonly Float64Array[]): Float64Array {
  for (const other of others) {
    const common = dot(column, other) / dot(other, other);
    for (let s = 0; s < column.length; s++) column[s]! -= common * other[s]!;
  }
  const scale = Math.sqrt(column.length / dot(column, column));
  return column.map((value) => value * scale);
}

export type Normals = {
  readonly draws: number;
  /** Standard normal numbers of one input over all draws. */
  readonly input: (index: number) => Float64Array;
};

/** So many inputs at most are uncorrelated with all others; the first ones matter most. */
const MOST_STRAIGHT = 9;
/** ... and no more than one for so many draws, or too little is left of the strata. */
const DRAWS_PER_STRAIGHT = 8;

/**
 * Stratified standard normal draws: over the draws, every input takes each of its n equally likely strata once. The
 * first seven inputs are spread evenly together (R. D. Richtmyer's sequence, as in H. Niederreiter, Bull. AMS 84 (1978)
 * 957), the others are paired at random (Latin hypercube: McKay, Beckman, Conover, Technometrics 21 (1979) 239).
 *
 * Chances hang on the moments of the draws as much as on their strata, so the moments are made right: each draw has
 * its mirror image among the others (antithetic variates: J. M. Hammersley, K. W. Morton, Proc. Camb. Phil. Soc. 52
 * (1956) 449), and variances are 1 and the first inputs' correlations with all others 0, for which a value moves a
 * little out of the middle of its stratum (moment matching: J. Barraquand, Management Science 41 (1995) 1882). The
 * same seed gives the same draws.
 */
export function stratifiedNormals(draws: number, seed: number): Normals {
  if (!(Number.isInteger(draws) && draws >= 1 && draws <= 100_000))
    throw new RangeError(`the number of draws must be 1 to 100,000, got ${draws}`);
  const levels = strata(draws);
  const straight = Math.min(MOST_STRAIGHT, Math.floor(draws / DRAWS_PER_STRAIGHT));
  const made = new Map<number, Float64Array>();
  const make = (index: number) => {
    const uniform = seededUniform(seed, index + 1);
    const step = JOINT[index];
    const order = step === undefined ? mirroredOrder(draws, uniform) : sequenceOrder(draws, step, uniform());
    const column = byRank(order, levels);
    const before = Array.from({ length: Math.min(index, straight) }, (_, i) => input(i));
    return draws === 1 ? column : straighten(column, before);
  };
  const input = (index: number): Float64Array => {
    const known = made.get(index);
    if (known !== undefined) return known;
    const column = make(index);
    made.set(index, column);
    return column;
  };
  return { draws, input };
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
