import { freeFrom } from '@/lib/plan/accepted-plan';
import type { Run } from '@/lib/plan/types';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';

export type ActWindow = {
  readonly start: Instant;
  /** The start of the run the act is for. */
  readonly end: Instant;
  /** Minutes before the end at which the act must begin at the latest. */
  readonly lastMinutes: number;
};

/** A gap of a night is no appointment of a night: an act stands in the calendar for its last hour. (Judgement.) */
const LONGEST_MINUTES = 60;
const SHORTEST_MINUTES = 1;

/** When an act before a run can be done, as a calendar shows it; the clock does not move it. */
export function actWindow(sortedRuns: readonly Run[], run: number, minutes: number): ActWindow {
  const end = sortedRuns[run]!.start;
  const latest = addMinutes(end, -minutes);
  const longest = addMinutes(latest, -LONGEST_MINUTES);
  const free = run === 0 ? longest : freeFrom(sortedRuns, run);
  const start = Math.min(Math.max(free, longest), end - SHORTEST_MINUTES * 60_000);
  return { start: instant(start), end, lastMinutes: Math.min(minutes, (end - start) / 60_000) };
}
