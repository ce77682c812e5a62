import { type Choice, type Cost, costOf, LOSS_UNIT, leanOfHarm, richOfHarm } from './choice';
import { CLEARLY_BETTER_LEAST, CLEARLY_BETTER_SHARE } from './judgement';
import type { Solution } from './optimise';

export type Steady = { readonly plan: readonly number[]; readonly cost: Cost; readonly kept: boolean };

/** Whether a fresh plan is so much better that changing one's mind is worth it. */
export function isClearlyBetter(fresh: Cost, accepted: Cost): boolean {
  if (leanOfHarm(fresh.harm) < leanOfHarm(accepted.harm)) return true;
  if (richOfHarm(fresh.harm) < richOfHarm(accepted.harm)) return true;
  const gain = accepted.cost - fresh.cost;
  return gain > Math.max(CLEARLY_BETTER_SHARE * accepted.cost, CLEARLY_BETTER_LEAST / LOSS_UNIT);
}

/**
 * The accepted plan, unless it no longer fits its gaps, is lean above the limit where that can be helped, or a fresh
 * one is clearly better: planning afresh at every breath of wind loses trust.
 */
export function keepSteady(choice: Choice, fresh: Solution, accepted: readonly number[] | null): Steady {
  const again: Steady = { plan: fresh.plan, cost: fresh.cost, kept: false };
  if (accepted === null || accepted.includes(-1)) return again;
  const cost = costOf(choice, accepted);
  if (cost === null || isClearlyBetter(fresh.cost, cost)) return again;
  return { plan: accepted, cost, kept: accepted.some((candidate, i) => candidate !== fresh.plan[i]) };
}
