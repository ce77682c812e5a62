import { normalBelow } from './normal';

/** Curves are taken here, between the median and the tail that limits look at. */
export const U0 = 1;

/**
 * The ideal log area L over a run, in every draw s and at every instant j, as a parabola in u:
 *
 *     L_j(s, u) = base + slope v + bend v²,   v = u − U0
 *
 * u is one direction in the space of all that is uncertain (temperature, pressure, response, baseline): the one in which
 * L at the window's centre changes most. Along it u is a standard normal variable. A draw s fixes everything at right
 * angles to it. So a chance is an exact integral over u, and then a mean over the draws. That needs far fewer draws than
 * counting does (conditional Monte Carlo).
 */
export type RunOdds = {
  readonly draws: number;
  readonly instants: number;
  /** At [from + s * instants + j], in memory shared by all runs of the night. */
  readonly from: number;
  readonly base: Float64Array;
  readonly slope: Float64Array;
  readonly bend: Float64Array;
  /** exp(−L) of each draw itself. */
  readonly perIdeal: Float64Array;
  /** At [drawFrom + s]: u of each draw itself, and its highest L. */
  readonly drawFrom: number;
  readonly u: Float64Array;
  readonly highest: Float64Array;
  readonly bounds: OddsBounds;
  /** Chances of rising above a threshold that were asked for before: the choice and what is told about it ask the same. */
  readonly known: Map<number, number>;
};

/** Over all draws and instants, to tell certainties without an integral. */
export type OddsBounds = {
  readonly highestBase: number;
  readonly lowestBase: number;
  readonly steepestSlope: number;
  readonly strongestBend: number;
  /** No curve falls anywhere within the certain range of u. */
  readonly risesOnly: boolean;
  /** Lowest L of the draws themselves. */
  readonly lowestIdeal: number;
  /** Every draw has an instant at least this high, and one at most this low. */
  readonly surelyReached: number;
  readonly surelyUndercut: number;
};

/** A slope this small counts as none. */
const FLAT = 1e-9;
/** Beyond this many standard deviations a chance is 0 or 1 to 3e-7, a thousandth of what the draws resolve. */
export const CERTAIN = 5;

/** The most L can change over a way along u. */
function change({ bounds }: RunOdds, way: number): number {
  return way * (bounds.steepestSlope + bounds.strongestBend * way);
}

/**
 * How far a curve can get from its base towards higher L (side 1) or lower (−1) within the certain range of u. Curves
 * that only rise get up from U0 alone, and down from there over the whole lower half.
 */
function reach(odds: RunOdds, side: 1 | -1): number {
  return change(odds, odds.bounds.risesOnly ? CERTAIN - side * U0 : CERTAIN + U0);
}

/** Chance that L rises above a threshold somewhere in the run. */
export function chanceAbove(odds: RunOdds, threshold: number): number {
  if (threshold > odds.bounds.highestBase + reach(odds, 1)) return 0;
  if (threshold < odds.bounds.surelyReached - reach(odds, -1)) return 1;
  const known = odds.known.get(threshold);
  if (known !== undefined) return known;
  const chance = chanceBeyond(odds, threshold, 1);
  odds.known.set(threshold, chance);
  return chance;
}

/** Chance that L falls below a threshold somewhere in the run. */
export function chanceBelow(odds: RunOdds, threshold: number): number {
  if (threshold < odds.bounds.lowestBase - reach(odds, -1)) return 0;
  return threshold > odds.bounds.surelyUndercut + reach(odds, 1) ? 1 : chanceBeyond(odds, threshold, -1);
}

/**
 * Mean over the draws of the chance that, at some instant, side (L − threshold) > 0. In u that is everything above the
 * lowest rising crossing and everything below the highest falling one. Of a parabola's two crossings the one on the
 * near side of its turn counts; the other lies far beyond where u goes.
 */
function chanceBeyond(odds: RunOdds, threshold: number, side: 1 | -1): number {
  const { draws, instants, base, slope, bend, from } = odds;
  let sum = 0;
  let i = from;
  for (let s = 0; s < draws; s++) {
    let above = Number.POSITIVE_INFINITY;
    let below = Number.NEGATIVE_INFINITY;
    for (let j = 0; j < instants; j++, i++) {
      const rise = side * slope[i]!;
      const short = side * (threshold - base[i]!);
      const square = rise * rise + 4 * side * bend[i]! * short;
      if (Math.abs(rise) < FLAT || square < 0) {
        // It turns before it gets there, on the side where it stands at U0.
        if (short < 0) above = Number.NEGATIVE_INFINITY;
      } else if (rise > 0) above = Math.min(above, U0 + (2 * short) / (rise + Math.sqrt(square)));
      else below = Math.max(below, U0 + (2 * short) / (rise - Math.sqrt(square)));
    }
    if (below >= above) sum += 1;
    else sum += tail(-above) + tail(below);
  }
  return sum / draws;
}

/**
 * True where the chance of passing a threshold (side 1: above, −1: below) is surely at most Φ(−tail), told from bounds
 * and without an integral. False says nothing.
 *
 * A curve that only rises is at most its base below U0 and gains at most change(u − U0) above it; passing a threshold
 * that is further away than change(tail − U0) then takes u > tail. On the low side the same from U0 down to −tail.
 */
export function isSurelyRare(
  odds: RunOdds,
  pass: { readonly threshold: number; readonly side: 1 | -1; readonly tail: number },
): boolean {
  const { threshold, side, tail } = pass;
  if (!odds.bounds.risesOnly) return false;
  const room = side === 1 ? threshold - odds.bounds.highestBase : odds.bounds.lowestBase - threshold;
  return room > change(odds, Math.max(0, tail - side * U0));
}

/** normalBelow with its ends cut off where nothing is left. */
function tail(x: number): number {
  if (x < -CERTAIN - 1) return 0;
  return x > CERTAIN + 1 ? 1 : normalBelow(x);
}

/** How far L stands above a threshold, mean over the draws of the run's highest. */
export function meanExcess(odds: RunOdds, threshold: number): number {
  let sum = 0;
  for (let s = 0; s < odds.draws; s++) sum += Math.max(0, odds.highest[odds.drawFrom + s]! - threshold);
  return sum / odds.draws;
}

/** The threshold that L rises above with a given chance, to 1e-9. */
export function levelAbove(odds: RunOdds, chance: number): number {
  let low = odds.bounds.surelyReached - reach(odds, -1) - FLAT;
  let high = odds.bounds.highestBase + reach(odds, 1) + FLAT;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (chanceAbove(odds, middle) > chance) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Mean power lost by one carburettor over the run: k drift² on the rich side, nothing on the lean side, which counts
 * as risk.
 */
export function meanLoss(odds: RunOdds, delivered: number, richPowerLoss: number): number {
  const { perIdeal, from } = odds;
  if (delivered <= odds.bounds.lowestIdeal) return 0;
  const to = from + odds.draws * odds.instants;
  const fuel = Math.exp(delivered);
  let sum = 0;
  for (let i = from; i < to; i++) {
    const drift = fuel * perIdeal[i]! - 1;
    if (drift > 0) sum += Math.min(1, richPowerLoss * drift * drift);
  }
  return sum / (to - from);
}
