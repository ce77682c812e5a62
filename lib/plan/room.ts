import type { Candidate } from './candidates';
import type { RunChoice } from './choice';
import { isLeanWithin, type Judge } from './grade';
import { FORECAST_NOISE } from './judgement';
import { slopesAt } from './machine-need';
import { firstFrom, risingBy } from './rising';
import type { RunOdds } from './run-odds';
import type { View } from './view';

/** The least lean risk that counts: it comes after any true one, and before everything else. */
const CLOSE = 1;

/** How far a forecast's noise moves the ideal of a run, as a log of area. */
export function noiseIn({ need, breathed }: View, run: number): number {
  const curve = breathed.windows[run]!;
  const middle = Math.floor(curve.level.length / 2);
  return Math.abs(slopesAt(need, curve, middle).temperature) * FORECAST_NOISE;
}

type Accepted = {
  readonly judge: Judge;
  readonly candidates: readonly Candidate[];
  /** Of the open runs, as all below. */
  readonly odds: readonly RunOdds[];
  readonly rooms: readonly number[];
  /** The accepted candidate; -1 where it can't be fitted any more. */
  readonly accepted: readonly number[];
};

/**
 * The choice as it stands for somebody who has a plan: a setting that is not the accepted one is taken for a run only
 * where it keeps the lean limit with a forecast's noise to spare, if any does. Plans turn richer as soon as the limit
 * is passed, and leaner again only when that will last: one change instead of one with every new forecast. The limit
 * itself is never widened.
 */
export function withRoom(
  choice: RunChoice,
  { judge, candidates, odds, rooms, accepted }: Accepted,
): RunChoice {
  const lean = choice.lean.slice();
  const rising = risingBy(candidates, 'leanest');
  for (const [i, run] of odds.entries()) {
    const clear = firstFrom(
      rising.length,
      (c) => !isLeanWithin(run, candidates[rising[c]!]!, judge, rooms[i]!),
    );
    for (const c of rising.subarray(0, clear)) {
      const at = i * choice.candidates + c;
      if (lean[at] === 0 && c !== accepted[i]) lean[at] = CLOSE;
    }
  }
  return { ...choice, lean };
}
