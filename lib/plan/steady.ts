import { type Cost, costOf, LOSS_UNIT, leanOfHarm, type RunChoice, richOfHarm } from './choice';
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
export type Accepted = { readonly plan: readonly number[]; readonly choice: RunChoice };

/**
 * The accepted plan, unless it no longer fits its gaps, is lean above the limit where that can be helped, or another
 * one is clearly better: planning afresh at every breath of wind loses trust.
 */
export function keepSteady(choice: RunChoice, fresh: Solution, accepted: Accepted | null): Steady {
  if (accepted === null) return { plan: fresh.plan, cost: fresh.cost, kept: false };
  const other = optimise(accepted.choice);
  const cost = accepted.plan.includes(-1) ? null : costOf(accepted.choice, accepted.plan);
  const stays = cost !== null && !isClearlyBetter(other.cost, cost);
  const plan = stays ? accepted.plan : other.plan;
  return {
    plan,
    cost: costOf(choice, plan) ?? fresh.cost,
    kept: stays && plan.some((candidate, i) => candidate !== fresh.plan[i]),
  };
}
