import type { Setting } from '@/lib/carb/machine';
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

/** A glyph of a name, the air on both sides of it, and the drawing where it is narrowest: as LEAN and RICH are wide [px]. */
const [GLYPH, AIR, NARROWEST] = [8, 4, 64] as const;
/** ", trim 3". */
const TRIM_GLYPHS = 8;

/** What the name of old jets takes of the drawing at most: less of every wider one. */
export function nameShare({ mains, trim }: Setting): number {
  const glyphs = String(mains[0] ?? '').length + (trim === null ? 0 : TRIM_GLYPHS);
  return (glyphs * GLYPH + AIR) / NARROWEST;
}

/**
 * Where a name beside the line of old jets has most room: up to the plan's line, an edge of a bank, or the drawing's end.
 * Where that is not `enough` for it, it may stand over an edge, and where even that is too little past the drawing's left
 * end, between two rows of words; but never over the plan's line, nor past the right end, where the page ends.
 */
export function roomBeside(
  { x, line, enough }: { readonly x: number; readonly line: number | null; readonly enough: number },
  { leanEdge, richEdge }: Across,
): Beside {
  const ends = [0, 1, ...(line === null ? [] : [line])];
  const within = widestBeside(x, [...ends, leanEdge, richEdge]);
  if (within.to - within.from >= enough) return within;
  const whole = widestBeside(x, ends);
  return whole.side === 'left' && whole.from === 0 ? { ...whole, from: Math.min(0, x - enough) } : whole;
}

function widestBeside(x: number, bounds: readonly number[]): Beside {
  const left = Math.max(...bounds.filter((bound) => bound <= x));
  const right = Math.min(...bounds.filter((bound) => bound > x));
  return right - x >= x - left ? { from: x, to: right, side: 'right' } : { from: left, to: x, side: 'left' };
}
