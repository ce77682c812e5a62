import type { Plan, Swap } from '@/lib/plan/types';

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
