import { jetArea, sizeOfArea } from '@/lib/carb/jets';
import type { Machine } from '@/lib/carb/machine';
import { logTrim } from '@/lib/carb/trim';

/** Where a jet is right, in sizes of the ideal: it is lean where the ideal lies above, too rich where it lies below. */
export type Lane = {
  readonly size: number;
  /** The size the jet stands for with its trim; the jet's own where there is no trim. */
  readonly worth: number;
  readonly richEdge: number;
  readonly leanEdge: number;
};

/**
 * The lane of a jet: drift = area / ideal area - 1 between minus the lean limit and the rich limit.
 *
 *     rich edge: A / (1 + rich)      lean edge: A / (1 - lean)
 */
export function laneOf(machine: Machine, size: number, trim: number | null): Lane {
  const { marking, limits } = machine;
  const area = jetArea(marking, size) * Math.exp(logTrim(machine.trim, trim));
  return {
    size,
    worth: sizeOfArea(marking, area),
    richEdge: sizeOfArea(marking, area / (1 + limits.rich)),
    leanEdge: sizeOfArea(marking, area / (1 - limits.lean)),
  };
}
