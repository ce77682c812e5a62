import type { Pilot } from './machine';

export type PilotAdvice = {
  /** The pilot jet to have fitted. */
  readonly jet: number;
  /** Turns out with that jet, inside the allowed range. */
  readonly turns: number;
  /** Turns the fitted jet would ask for, in or out of its range. */
  readonly turnsWanted: number;
  /**
   * `turn`: the screw alone does it. `change-jet`: the range ends, another owned pilot takes over.
   * `none-left`: no owned pilot reaches; the nearest is given with the screw at its end.
   */
  readonly act: 'turn' | 'change-jet' | 'none-left';
  /** ln of delivered over wanted pilot fuel that is left over: 0, or negative where it stays lean. */
  readonly logLeft: number;
};

/**
 * Whole pilot sizes from one jet to another. The marks say how far apart they are, so that a jet missing from the
 * drawer is not taken for the next size; neighbours whose marks are closer than half a size still count as one apart.
 */
export function pilotSizesBetween(pilot: Pilot, from: number, to: number): number {
  if (from === to) return 0;
  const sizes = Math.round(Math.log(to / from) / Math.log1p(pilot.richerPerSize));
  return sizes === 0 ? Math.sign(to - from) : sizes;
}

/**
 * The screw for given air, and the pilot jet that takes over where the screw's range ends.
 *
 *     turns = turns0 ± turnsPerSize (ln need / ln(1 + r) − sizes)      + fuel screw (out = richer), − air screw
 *
 * where r is the fuel of one pilot size and `sizes` is how many sizes the jet stands above the baseline's.
 *
 * @param logNeed ln of pilot fuel wanted over the baseline's: the orifice law, since the pilot works alone
 */
export function pilotFor(pilot: Pilot, logNeed: number): PilotAdvice {
  const fits = reachableJets(pilot)
    .map((jet) => withJet(pilot, jet, logNeed))
    .sort((a, b) => Math.abs(a.sizes) - Math.abs(b.sizes));
  const fitted = fits[0]!;
  const inRange = fits.find((fit) => Math.abs(fit.turns - fit.turnsWanted) < TURNS_SLACK);
  const best = inRange ?? nearest(fits);
  return {
    jet: best.jet,
    turns: best.turns,
    turnsWanted: fitted.turnsWanted,
    act: inRange === undefined ? 'none-left' : best.jet === pilot.jet ? 'turn' : 'change-jet',
    logLeft: best.logLeft,
  };
}

/** Rounding noise at the very end of the range must not ask for another jet. */
const TURNS_SLACK = 1e-9;

/** Turns are set by eighths; nobody's hand is finer. Judgement. */
const PER_TURN = 8;

/** Turns rounded to the richer eighth that the screw can still be set to: a fuel screw further out, an air screw in. */
export function settableTurns(turns: number, { screw, leastTurns, mostTurns }: Pilot): number {
  // A hair of forgiveness, so that a whole eighth stays one through binary fractions.
  const up = Math.ceil(turns * PER_TURN - 1e-6) / PER_TURN;
  const down = Math.floor(turns * PER_TURN + 1e-6) / PER_TURN;
  if (screw === 'fuel') return up <= mostTurns + 1e-6 ? up : down;
  return down >= leastTurns - 1e-6 ? down : up;
}

/** ln of the fuel that a number of turns gives over what another number gives. */
export function logOfTurns(turns: number, from: number, pilot: Pilot): number {
  const outward = pilot.screw === 'fuel' ? 1 : -1;
  return (outward * (turns - from) * Math.log1p(pilot.richerPerSize)) / pilot.turnsPerSize;
}

type Fit = {
  readonly jet: number;
  readonly sizes: number;
  readonly turnsWanted: number;
  readonly turns: number;
  readonly logLeft: number;
};

function reachableJets(pilot: Pilot): readonly number[] {
  return [...new Set([pilot.jet, ...pilot.jets])];
}

function withJet(pilot: Pilot, jet: number, logNeed: number): Fit {
  const sizes = pilotSizesBetween(pilot, pilot.jet, jet);
  const logPerSize = Math.log1p(pilot.richerPerSize);
  const outward = pilot.screw === 'fuel' ? 1 : -1;
  const turnsWanted = pilot.turns + outward * pilot.turnsPerSize * (logNeed / logPerSize - sizes);
  const turns = Math.min(Math.max(turnsWanted, pilot.leastTurns), pilot.mostTurns);
  return { jet, sizes, turnsWanted, turns, logLeft: logOfTurns(turns, turnsWanted, pilot) };
}

function nearest(fits: readonly Fit[]): Fit {
  return fits.reduce((best, fit) => (Math.abs(fit.logLeft) < Math.abs(best.logLeft) ? fit : best));
}
