import { addMinutes, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { issuedAt } from './forecast-error';
import type { Plan, PlanRequest } from './types';

/**
 * The plan of a little later where nothing moved but the clock: `request` is the one that `plan` answered at `before`,
 * with a later `now`. The very same plan while nothing in it begins now; a window that does moves along. null where the
 * night has to be planned again: a run has begun, a gap has grown too short for a swap, the hours count as newer.
 */
export function planLater(request: PlanRequest, plan: Plan, before: Instant): Plan | null {
  const { now, options, runs } = request;
  const passed = (moment: Instant) => moment >= before && moment < now;
  const isDecided = runs.some(
    ({ start }) => passed(start) || passed(addMinutes(start, -options.swapMinutes)),
  );
  if (now < before || isDecided || issuedAt(request) !== issuedAt({ ...request, now: before })) return null;
  if (plan.warnings.some((warning) => warning.code === 'swap-does-not-fit' && shrinks(warning, plan, before)))
    return null;
  if (plan.swaps.every(({ windowStart }) => windowStart >= now)) return plan;
  const swaps = plan.swaps.map((swap) => ({
    ...swap,
    windowStart: instant(Math.max(swap.windowStart, now)),
  }));
  return { ...plan, swaps };
}

/** True where a gap that is told in minutes was counted from `before` on. */
function shrinks(
  { run, gapMinutes }: { readonly run: number; readonly gapMinutes: number },
  { sortedRuns }: Plan,
  before: Instant,
): boolean {
  return sortedRuns[run]!.start - gapMinutes * MINUTE_MS <= before;
}
