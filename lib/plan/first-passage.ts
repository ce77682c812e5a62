import { gaussLegendre } from './gauss-legendre';
import { normalBelow, normalDensity } from './normal';

/** Where a standard normal is taken to end; 6e-5 is outside. */
const END = 4;
/** Places of a rule in one width of the kernel that is to be resolved. */
const PLACES_PER_WIDTH = 1.1;
const FEWEST_PLACES = 6;
/** Kernels narrower than this are taken as this wide. */
const NARROWEST = 0.08;
/** exp(−16) of a kernel is nothing beside its middle. */
const NOTHING_LEFT = 16;
/** Less than this still below the boundary counts as none. */
const NOBODY = 1e-5;

/** Standard normals z_k, each correlated with the next (and Markov), with a boundary for each. */
export type Boundaries = {
  readonly boundary: Float64Array;
  /** Correlation of each with the next; one shorter. */
  readonly kept: Float64Array;
};

/** Those that never were above: their density, as masses at the places of a rule. */
type Below = { readonly places: Float64Array; readonly masses: Float64Array; readonly share: number };

/** √(1 − ρ²) of step k to k + 1: how wide z scatters around what it keeps. */
function widthOf(kept: Float64Array, k: number): number {
  const rho = kept[k];
  return rho === undefined ? 1 : Math.max(NARROWEST, Math.sqrt(Math.max(0, 1 - rho * rho)));
}

/** A rule below boundary k, fine enough for the step before and the one after. */
function ruleBelow({ boundary, kept }: Boundaries, k: number) {
  const half = (Math.min(boundary[k]!, END) + END) / 2;
  const width = Math.min(widthOf(kept, k - 1), widthOf(kept, k));
  const size = Math.max(FEWEST_PLACES, Math.ceil((2 * half * PLACES_PER_WIDTH) / width));
  const { places, weights } = gaussLegendre(size);
  return {
    places: places.map((x) => half * (x + 1) - END),
    weights: weights.map((weight) => half * weight),
  };
}

function startBelow(given: Boundaries, k: number): Below {
  const { places, weights } = ruleBelow(given, k);
  return {
    places,
    masses: places.map((z, i) => normalDensity(z) * weights[i]!),
    share: normalBelow(given.boundary[k]!),
  };
}

/** f'(y) = ∫ f(x) φ((y − ρx)/w) / w dx, w = √(1 − ρ²). */
function stepBelow(given: Boundaries, k: number, before: Below): Below {
  const { places, weights } = ruleBelow(given, k);
  const width = widthOf(given.kept, k - 1);
  const rho = given.kept[k - 1]!;
  const sharp = 1 / (2 * width * width);
  const scale = 1 / (width * Math.sqrt(2 * Math.PI));
  const centres = before.places.map((x) => rho * x);
  const masses = new Float64Array(places.length);
  let share = 0;
  for (let i = 0; i < places.length; i++) {
    let density = 0;
    for (let n = 0; n < centres.length; n++) {
      const way = places[i]! - centres[n]!;
      const far = way * way * sharp;
      if (far < NOTHING_LEFT) density += before.masses[n]! * Math.exp(-far);
    }
    masses[i] = density * scale * weights[i]!;
    share += masses[i]!;
  }
  return { places, masses, share: Math.min(share, before.share) };
}

/**
 * Adds to `passed`, times `weight`, the chance that z has been above its boundary by step k, for every k. The density
 * of those that never were is carried from step to step on Gauss-Legendre rules below each boundary, where it is
 * smooth.
 */
export function addPassed(given: Boundaries, weight: number, passed: Float64Array): void {
  const { boundary } = given;
  const first = boundary.findIndex((z) => z < END);
  if (first === -1) return;
  let below: Below | null = null;
  for (let k = first; k < boundary.length; k++) {
    if (boundary[k]! > -END && (below === null || below.share > NOBODY))
      below = below === null ? startBelow(given, k) : stepBelow(given, k, below);
    else below = GONE;
    passed[k]! += weight * (1 - below.share);
  }
}

const GONE: Below = { places: new Float64Array(), masses: new Float64Array(), share: 0 };
