import type { Machine } from '@/lib/carb/machine';
import { logSizeStep } from '@/lib/carb/size-step';

/** A place across a drawing of mixtures, as a share of its width: 0 is as lean as is drawn, 1 as rich. */
export type PlaceAcross = {
  /** Within the drawing, also where what it stands for lies outside. */
  readonly x: number;
  readonly beyond: 'lean' | 'rich' | null;
};

/** Mixture from left to right, the same everywhere: the lean bank, what is good, the rich bank. */
export type Across = {
  readonly lean: number;
  readonly rich: number;
  /** Where the lean bank ends and the rich one begins, and where the baseline stands. */
  readonly leanEdge: number;
  readonly richEdge: number;
  readonly baseline: number;
};

/** What each bank takes of the width. */
const BANK = 0.18;
/** What is further out is drawn at the edge, so that half of it can still be seen. */
const LAST = 0.02;

export function acrossOf({ limits }: Pick<Machine, 'limits'>): Across {
  const { lean, rich } = limits;
  const across = { lean, rich, leanEdge: BANK, richEdge: 1 - BANK, baseline: 0 };
  return { ...across, baseline: placeOf(across, 0).x };
}

/** Where a drift stands. */
export function placeOf({ lean, rich }: Pick<Across, 'lean' | 'rich'>, drift: number): PlaceAcross {
  const x = BANK + ((1 - 2 * BANK) * (drift + lean)) / (lean + rich);
  if (x < 0) return { x: LAST, beyond: 'lean' };
  if (x > 1) return { x: 1 - LAST, beyond: 'rich' };
  return { x: Math.min(1 - LAST, Math.max(LAST, x)), beyond: null };
}

/** Places one jet size apart, counted from the baseline, as far as they are drawn; near a jet of that size. */
export function sizeTicks(machine: Machine, across: Across, size: number): readonly number[] {
  const step = logSizeStep(machine, size);
  const places = (way: 1 | -1) => {
    const found: number[] = [];
    for (let sizes = way; Math.abs(sizes) <= MOST_TICKS; sizes += way) {
      const place = placeOf(across, Math.expm1(sizes * step));
      if (place.beyond !== null) break;
      found.push(place.x);
    }
    return found;
  };
  return [...places(-1).reverse(), across.baseline, ...places(1)];
}

const MOST_TICKS = 12;
