import { normaliseBox } from '@/lib/carb/box';
import type { Box, Machine } from '@/lib/carb/machine';

/** Steps beyond the smallest and the largest jet owned. */
const BEYOND = 15;
/** Sizes closer than this share are the same size from two makers, no step. Judgement. */
const LEAST_STEP = 0.008;

/**
 * Every size that is made, enough of each for all carburettors: the person's own list, else the steps of the box carried
 * on both ways from its smallest jet. null where a box of one size tells no step.
 */
export function madeBox({ marking, box, carburettors }: Machine): Box | null {
  const count = carburettors.length;
  if (marking.kind === 'list') return marking.jets.map(({ size }) => ({ size, count }));
  const sizes = normaliseBox(box).map(({ size }) => size);
  const step = boxStep(sizes);
  const [smallest, largest] = [sizes[0], sizes.at(-1)];
  if (step === null || smallest === undefined || largest === undefined) return null;
  const first = -Math.min(BEYOND, Math.floor(smallest / step) - 1);
  const last = Math.ceil((largest - smallest) / step) + BEYOND;
  const grid = Array.from({ length: last - first + 1 }, (_, i) => smallest + (first + i) * step);
  // A jet that is owned is made, whether it stands on a step or not.
  return [...new Set([...grid, ...sizes])].sort((a, b) => a - b).map((size) => ({ size, count }));
}

/** The smallest gap between neighbours of the box that is a step. */
function boxStep(sizes: readonly number[]): number | null {
  const gaps = sizes.slice(1).flatMap((size, i) => {
    const gap = size - sizes[i]!;
    return gap >= LEAST_STEP * size ? [gap] : [];
  });
  return gaps.length === 0 ? null : Math.min(...gaps);
}
