/** What can be done in the gap before a run. */
export type Gap = 'nothing' | 'trim' | 'swap';

/**
 * The choice as plain numbers: which candidate for which run. All costs are whole numbers, so that sums are exact and
 * "equal" means equal; `inUnits` makes them.
 */
export type RunChoice = {
  readonly runs: number;
  readonly candidates: number;
  /** Candidates with the same jets share a group; between them only the trim differs. Numbered from 0. */
  readonly group: readonly number[];
  /** Of candidate c in run r at [r * candidates + c]: lean risk above its limit, or that it does not run at all. */
  readonly lean: Float64Array;
  /** 1 where it is too rich in most cases. */
  readonly rich: Float64Array;
  /** Weighted power lost. */
  readonly loss: Float64Array;
  readonly gaps: readonly Gap[];
  /** Size of the step between two groups, for the last tie. At [from * groups + to]. */
  readonly steps: Float64Array;
  /** The candidate that is fitted before the first run. */
  readonly start: number;
  readonly swapCost: number;
  readonly turnCost: number;
};

/** Smallest lean risk, loss and step that count. */
export const LEAN_UNIT = 1e-9;
export const LOSS_UNIT = 1e-12;
export const STEP_UNIT = 1e-4;

export function inUnits(value: number, unit: number): number {
  return Math.round(value / unit);
}

/**
 * What a plan costs, in the order of what counts. `harm`: lean risk above its limit, then the count of too-rich runs.
 * `cost`: weighted loss, swaps and turns. `tie`: what decides between equals.
 */
export type Cost = { readonly harm: number; readonly cost: number; readonly tie: number };

/** Both parts of harm in one number: a rich run never weighs as much as the smallest lean risk. */
const RICH_SPAN = 128;

export function harmOf(choice: RunChoice, index: number): number {
  return choice.lean[index]! * RICH_SPAN + choice.rich[index]!;
}

export function leanOfHarm(harm: number): number {
  return Math.floor(harm / RICH_SPAN);
}

export function richOfHarm(harm: number): number {
  return harm % RICH_SPAN;
}

/**
 * Ties in one number, most important first: fewest swaps, fewest turns, the jet kept longest (a swap before run r of R
 * counts R − r), the smaller step. With at most 60 runs all parts stay within their span and the sum within 2⁵³.
 */
const STEP_SPAN = 2 ** 23;
const KEPT_SPAN = 2 ** 11;
const TURN_SPAN = 2 ** 6;

export function swapTie(runsLeft: number, step: number): number {
  return TURN_SPAN * KEPT_SPAN * STEP_SPAN + runsLeft * STEP_SPAN + step;
}

export function turnTie(runsLeft: number): number {
  return KEPT_SPAN * STEP_SPAN + runsLeft * STEP_SPAN;
}

/** The cost of a whole plan, one candidate for each run; null where a change does not fit its gap. */
export function costOf(choice: RunChoice, plan: readonly number[]): Cost | null {
  let [harm, cost, tie] = [0, 0, 0];
  let before = choice.start;
  for (const [run, candidate] of plan.entries()) {
    const change = changeBetween(choice, { run, from: before, to: candidate });
    if (change === null) return null;
    harm += harmOf(choice, run * choice.candidates + candidate);
    cost += choice.loss[run * choice.candidates + candidate]! + change.cost;
    tie += change.tie;
    before = candidate;
  }
  return { harm, cost, tie };
}

/** What changing from one candidate to another before a run costs; null where it does not fit. */
export function changeBetween(
  choice: RunChoice,
  change: { readonly run: number; readonly from: number; readonly to: number },
): { readonly cost: number; readonly tie: number } | null {
  const { run, from, to } = change;
  if (from === to) return { cost: 0, tie: 0 };
  const [a, b] = [choice.group[from]!, choice.group[to]!];
  const gap = choice.gaps[run]!;
  const runsLeft = choice.runs - run;
  if (a === b) return gap === 'nothing' ? null : { cost: choice.turnCost, tie: turnTie(runsLeft) };
  if (gap !== 'swap') return null;
  return { cost: choice.swapCost, tie: swapTie(runsLeft, choice.steps[a * groupCount(choice) + b]!) };
}

export function groupCount(choice: RunChoice): number {
  return Math.sqrt(choice.steps.length);
}

/** Negative where a counts before b. */
export function compareCosts(a: Cost, b: Cost): number {
  return a.harm - b.harm || a.cost - b.cost || a.tie - b.tie;
}
