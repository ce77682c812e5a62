import { boxOfWords, type Patch, type WordsPlace } from './free-place';

/** A step of the plan's line in pixels: from where to where, how high, and the edges of what its jet is good for. */
export type PlanStep = {
  readonly left: number;
  readonly right: number;
  readonly y: number;
  readonly leanEdge: number;
  readonly richEdge: number;
  /** From when to when the swap that makes it can be begun, drawn from the head of the plot to its foot; null: none does. */
  readonly bounds: { readonly left: number; readonly right: number } | null;
};

/** Between a line and the foot of words over it, or the head of words under it. */
const GAP = 10;
/** How tall the stripes are that are drawn outside of both edges. */
export const STRIPES = { lean: 7, rich: 4 } as const;
/** Words slide along by this much at a time. */
const SLIDE = 6;
/** How much of a step words have to stand over to be its own. */
const LEAST_OVER = 16;
/** What a jet is good for is drawn of no shorter step: its stripes would be a speck [px]. */
const LEAST_LANE = 24;

/** What is worth as much as sliding along by so many pixels. */
const COST = { below: 40, pastEdge: 240, pastEnd: 30, beside: 300, atBounds: 600, stepBack: 1000 } as const;

/** Whether a step is long enough to show what its jet is good for. */
export function hasLane({ left, right }: Pick<PlanStep, 'left' | 'right'>): boolean {
  return right - left >= LEAST_LANE;
}

/**
 * Where the name of a step may begin: best over its beginning, then further along or under it or over its end, and only
 * where nothing else is left beyond the edges of its lane, beside it, or at the head or foot of the bounds of its swap.
 * Over, under and beside it never where another step is nearer.
 */
export function placesOfName(
  steps: readonly PlanStep[],
  step: PlanStep,
  { size, plot }: { readonly size: number; readonly plot: Patch },
) {
  const head = 0.76 * size;
  const rows = [
    { y: step.y - GAP, cost: 0 },
    { y: step.y + GAP + head - 2, cost: COST.below },
    { y: step.leanEdge - STRIPES.lean - GAP, cost: COST.pastEdge },
    { y: step.richEdge + STRIPES.rich + GAP + head, cost: COST.below + COST.pastEdge },
  ];
  return (width: number): readonly WordsPlace[] => {
    const best = step.left + 8;
    const count = Math.ceil((step.right - step.left + width) / SLIDE);
    const found = rows.flatMap(({ y, cost }) =>
      Array.from({ length: 2 * count + 1 }, (_, i) => best + (i - count) * SLIDE)
        .filter(
          (x) => Math.min(x + width, step.right) - Math.max(x, step.left) >= Math.min(LEAST_OVER, width),
        )
        .map((x) => {
          const isInside = x >= step.left && x + width <= step.right;
          return { x, y, cost: cost + Math.abs(x - best) + (isInside ? 0 : COST.pastEnd) };
        }),
    );
    const near = [...found, ...besides(step, width, step.y + head / 2, COST.beside)];
    return [
      ...near.filter(({ x, y }) => isNearest(steps, step, boxOfWords({ x, y }, width, size))),
      ...(step.bounds === null
        ? []
        : [plot.bottom - GAP, plot.top + GAP + head].flatMap((y) =>
            besides(step.bounds ?? step, width, y, COST.atBounds),
          )),
    ];
  };
}

/** To the right and to the left of what is so far across. */
function besides(
  { left, right }: Pick<PlanStep, 'left' | 'right'>,
  width: number,
  y: number,
  cost: number,
): readonly WordsPlace[] {
  return [
    { x: right + GAP, y, cost },
    { x: left - GAP - width, y, cost: cost + 1 },
  ];
}

/** Whether of all steps over or under a box this is the nearest. */
function isNearest(steps: readonly PlanStep[], step: PlanStep, box: Patch): boolean {
  const away = ({ y }: PlanStep): number => Math.abs(y - (box.top + box.bottom) / 2);
  return steps.every(
    (other) => other.left >= box.right || other.right <= box.left || away(other) >= away(step),
  );
}

/** Where LEAN or RICH may begin: outside of its edge of the last step, at its end, else further back. */
export function placesOfSide(
  steps: readonly PlanStep[],
  side: 'lean' | 'rich',
  { size, plot }: { readonly size: number; readonly plot: Patch },
) {
  return (width: number): readonly WordsPlace[] =>
    steps
      .filter(hasLane)
      .reverse()
      .flatMap(({ left, right, leanEdge, richEdge }, back) => {
        const y =
          side === 'lean'
            ? Math.max(plot.top + size, leanEdge - STRIPES.lean - 6)
            : Math.min(plot.bottom - 6, richEdge + STRIPES.rich + 3 + size);
        const most = right - 6 - width;
        const count = Math.max(0, Math.floor((most - left - 6) / SLIDE) + 1);
        return Array.from({ length: count }, (_, i) => ({
          x: most - i * SLIDE,
          y,
          cost: back * COST.stepBack + i,
        }));
      });
}
