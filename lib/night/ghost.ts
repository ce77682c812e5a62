import type { Plan, Swap } from '@/lib/plan/types';
import type { Across } from './across';

/** The first run in which the jets a swap takes out would be over a limit, by sorted run; null where none is named. */
export function crossAt({ reason }: Swap): number | null {
  return 'run' in reason ? reason.run : null;
}

/** The last run that the jets a swap takes out are followed to: to the next swap, where another jet would be in question. */
export function lastOfGhost(plan: Plan, swap: Swap): number {
  const next = plan.swaps.find(({ beforeRun }) => beforeRun > swap.beforeRun);
  const last = (next?.beforeRun ?? plan.runs.length) - 1;
  return Math.max(last, crossAt(swap) ?? last);
}

/** A free stretch across the drawing beside a line, and on which side of it. */
export type Beside = { readonly from: number; readonly to: number; readonly side: 'left' | 'right' };

/** What a name of three figures takes of the drawing on a phone. */
const ENOUGH = 0.21;

/**
 * Where a name beside the line of old jets has most room: up to the plan's line, an edge of a bank, or the drawing's end.
 * Where that is too little it may stand over an edge, but never over the plan's line.
 */
export function roomBeside(x: number, line: number | null, { leanEdge, richEdge }: Across): Beside {
  const ends = [0, 1, ...(line === null ? [] : [line])];
  const within = widestBeside(x, [...ends, leanEdge, richEdge]);
  return within.to - within.from >= ENOUGH ? within : widestBeside(x, ends);
}

function widestBeside(x: number, bounds: readonly number[]): Beside {
  const left = Math.max(...bounds.filter((bound) => bound <= x));
  const right = Math.min(...bounds.filter((bound) => bound > x));
  return right - x >= x - left ? { from: x, to: right, side: 'right' } : { from: left, to: x, side: 'left' };
}
