import { type Cost, compareCosts, costOf, type Gap, type RunChoice } from '@/lib/plan/choice';
import { seededUniform } from '@/lib/plan/stratified';

export type Dice = { readonly below: (n: number) => number; readonly chance: (p: number) => boolean };

export function dice(seed: number): Dice {
  const uniform = seededUniform(seed, 77);
  return { below: (n) => Math.floor(uniform() * n), chance: (p) => uniform() < p };
}

/**
 * An invented choice with many ties: few distinct costs, so that equal plans and the rules between them are common.
 * `levels` is how many distinct losses there are.
 */
export function inventedChoice(
  roll: Dice,
  size: { readonly runs: number; readonly groups: number; readonly trims: number; readonly levels: number },
): RunChoice {
  const { runs, groups, trims, levels } = size;
  const candidates = groups * trims;
  const cells = (value: () => number) => Float64Array.from({ length: runs * candidates }, value);
  const steps = new Float64Array(groups * groups);
  for (let a = 0; a < groups; a++)
    for (let b = 0; b < a; b++) steps[a * groups + b] = steps[b * groups + a] = 1 + roll.below(4);
  const gaps: readonly Gap[] = ['nothing', 'trim', 'swap', 'swap', 'swap'];
  return {
    runs,
    candidates,
    group: Array.from({ length: candidates }, (_, c) => Math.floor(c / trims)),
    lean: cells(() => (roll.chance(0.7) ? 0 : 1 + roll.below(3))),
    rich: cells(() => (roll.chance(0.25) ? 1 : 0)),
    loss: cells(() => roll.below(levels)),
    gaps: Array.from({ length: runs }, () => gaps[roll.below(gaps.length)]!),
    steps,
    start: roll.below(candidates),
    swapCost: roll.below(levels),
    turnCost: roll.below(2),
  };
}

/** Every plan there is, one candidate for each run. */
export function* everyPlan(choice: RunChoice): Generator<readonly number[]> {
  const plan = new Array<number>(choice.runs).fill(0);
  for (;;) {
    yield plan;
    let run = 0;
    while (run < choice.runs && plan[run] === choice.candidates - 1) plan[run++] = 0;
    if (run === choice.runs) return;
    plan[run]! += 1;
  }
}

/** The least cost over all plans for which `counts` is true, by looking at every one. */
export function bruteForce(
  choice: RunChoice,
  counts: (plan: readonly number[]) => boolean = () => true,
): Cost | null {
  let best: Cost | null = null;
  for (const plan of everyPlan(choice)) {
    const cost = costOf(choice, plan);
    if (cost === null || !counts(plan)) continue;
    if (best === null || compareCosts(cost, best) < 0) best = cost;
  }
  return best;
}
