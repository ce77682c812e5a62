import { type Cost, compareCosts, costOf, LOSS_UNIT, leanOfHarm, type RunChoice, richOfHarm } from './choice';
import { CLEARLY_BETTER_LEAST, CLEARLY_BETTER_SHARE } from './judgement';
import { optimise, type Solution } from './optimise';

export type Steady = { readonly plan: readonly number[]; readonly cost: Cost; readonly kept: boolean };

/** Whether a fresh plan is so much better that changing one's mind is worth it. */
function isClearlyBetter(fresh: Cost, accepted: Cost): boolean {
  if (leanOfHarm(fresh.harm) < leanOfHarm(accepted.harm)) return true;
  if (richOfHarm(fresh.harm) < richOfHarm(accepted.harm)) return true;
  const gain = accepted.cost - fresh.cost;
  return gain > Math.max(CLEARLY_BETTER_SHARE * accepted.cost, CLEARLY_BETTER_LEAST / LOSS_UNIT);
}

/** A plan that was accepted, and the choice as it stands for somebody who has it. */
export type Accepted = {
  readonly plan: readonly number[];
  readonly choice: RunChoice;
  /** Somebody reads the thermometer at the track: before what is still to come they will know more than now. */
  readonly reads: boolean;
};

/**
 * A plan with its next act put off for as long as that costs nothing: what is in stays in until a run is lean with it, or
 * loses power by it. Whoever reads before each run has then heard more, and may not need the act at all.
 */
function waiting(choice: RunChoice, plan: readonly number[]): readonly number[] {
  const first = plan.findIndex((candidate) => candidate !== choice.start);
  const asPlanned = costOf(choice, plan);
  if (first === -1 || asPlanned === null) return plan;
  let best = { plan, cost: asPlanned };
  for (let act = first + 1; act <= choice.runs; act++) {
    const later = plan.map((candidate, run) => (run < act ? choice.start : candidate));
    const cost = costOf(choice, later);
    if (cost !== null && compareCosts(cost, best.cost) < 0) best = { plan: later, cost };
  }
  return best.plan;
}

/**
 * The accepted plan, unless it no longer fits its gaps, is lean above the limit where that can be helped, or another
 * one is clearly better: planning afresh at every breath of wind loses trust. Its next act waits for whoever reads.
 */
export function keepSteady(choice: RunChoice, fresh: Solution, accepted: Accepted | null): Steady {
  if (accepted === null) return { plan: fresh.plan, cost: fresh.cost, kept: false };
  const other = optimise(accepted.choice);
  const cost = accepted.plan.includes(-1) ? null : costOf(accepted.choice, accepted.plan);
  const stays = cost !== null && !isClearlyBetter(other.cost, cost);
  const settled = stays ? accepted.plan : other.plan;
  const plan = accepted.reads ? waiting(accepted.choice, settled) : settled;
  return {
    plan,
    cost: costOf(choice, plan) ?? fresh.cost,
    kept: stays && plan === settled && plan.some((candidate, i) => candidate !== fresh.plan[i]),
  };
}
