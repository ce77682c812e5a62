import type { PlanChange, SwapAct } from '@/lib/plan/compared';
import type { Swap } from '@/lib/plan/types';
import type { LivePlan } from './live-plans';

/** A swap with the name it keeps from poll to poll. */
export type MatchedSwap = {
  /** `swap-2`: the second of the accepted plan. `new-before-5`: one that came up since, before the run with index 5. */
  readonly key: string;
  readonly accepted: SwapAct | null;
  /** null: settled, or no longer wanted. */
  readonly live: Swap | null;
  readonly change: PlanChange | null;
};

/** Acts before the first run belong to the start of the night. */
const afterStart = ({ beforeRun }: SwapAct): boolean => beforeRun > 0;

/** The swaps of the accepted plan, each with what became of it, and those that came up since. */
export function matchedSwaps({ accepted, standing, difference }: LivePlan): readonly MatchedSwap[] {
  const live = standing?.plan.swaps.filter(afterStart) ?? [];
  if (accepted === null)
    return live.map((swap, i) => ({ key: `swap-${i + 1}`, accepted: null, live: swap, change: null }));
  const changes = difference?.changes ?? [];
  const known = accepted.swaps.filter(afterStart).map((swap, i): MatchedSwap => {
    const change = changes.find((each) => oldOf(each) === swap) ?? null;
    const now = change === null ? live.find(({ beforeRun }) => beforeRun === swap.beforeRun) : newOf(change);
    return { key: `swap-${i + 1}`, accepted: swap, live: live.find((each) => each === now) ?? null, change };
  });
  const taken = new Set(known.map((swap) => swap.live));
  const fresh = live
    .filter((swap) => !taken.has(swap))
    .map((swap): MatchedSwap => {
      const change = changes.find((each) => newOf(each) === swap) ?? null;
      return { key: `new-before-${swap.beforeRun}`, accepted: null, live: swap, change };
    });
  return [...known, ...fresh];
}

function oldOf(change: PlanChange): SwapAct | null {
  switch (change.code) {
    case 'start-changed':
    case 'swap-added':
      return null;
    case 'swap-dropped':
      return change.swap;
    case 'swap-moved':
    case 'swap-target-changed':
      return change.from;
  }
}

function newOf(change: PlanChange): SwapAct | null {
  switch (change.code) {
    case 'start-changed':
    case 'swap-dropped':
      return null;
    case 'swap-added':
      return change.swap;
    case 'swap-moved':
    case 'swap-target-changed':
      return change.to;
  }
}
