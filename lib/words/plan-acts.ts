import type { ComparedPlan } from '@/lib/plan/compared';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { isolated } from './isolated';
import { actText, settingText } from './settings';
import { type Clock, clockText } from './times';

/**
 * What is still to do by a plan, also one known by its settings alone: "Round 3 on 410. Fit 420 before Round 4 (21:00)."
 * Runs that are over at `now` are left out.
 */
export function actsLine(plan: ComparedPlan, { zone, now }: { zone: ClockZone; now: Instant }): string {
  const start = plan.sortedRuns[0]?.start;
  const clock: Clock = start === undefined ? { zone } : { zone, from: start };
  const first = plan.runs.find(({ run }) => (plan.sortedRuns[run]?.end ?? now) > now);
  if (first === undefined) return 'All runs are over.';
  const nameOf = (run: number) => {
    const name = plan.sortedRuns[run]?.name;
    return name === undefined ? `run ${run + 1}` : isolated(name);
  };
  const swaps = plan.swaps.filter(({ beforeRun }) => beforeRun > first.run);
  const acts = swaps.map(
    ({ from, to, beforeRun, windowStart }) =>
      `${actText(from, to)} before ${nameOf(beforeRun)} (${clockText(windowStart, clock)}).`,
  );
  return [
    `${nameOf(first.run)} on ${settingText(first.setting)}.`,
    ...(acts.length === 0 ? ['No swap after that.'] : acts),
  ].join(' ');
}
