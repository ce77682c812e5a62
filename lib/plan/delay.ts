import { addMinutes, type Instant, MINUTE_MS } from '@/lib/time/instant';
import type { Plan } from './types';

/** "Run `from` and all after it, so many minutes later"; runs by sorted run, minutes negative for earlier. */
export type Delay = { readonly from: number; readonly minutes: number };

/** Runs a delay would move out of the hours: of them the plan would say nothing more. */
export type DelayOutcome = {
  readonly beyond: readonly number[];
  readonly before: readonly number[];
  readonly hoursStart: Instant;
  readonly hoursEnd: Instant;
};

type Timed = Pick<Plan, 'sortedRuns' | 'hoursEnd'> & {
  readonly hours: readonly { readonly at: Instant }[];
};

/** Which runs a delay moves out of the hours. Runs that lie outside them already are not named again. */
export function delayOutcome({ sortedRuns, hours, hoursEnd }: Timed, { from, minutes }: Delay): DelayOutcome {
  const hoursStart = hours[0]?.at ?? hoursEnd;
  const moved = sortedRuns.flatMap((run, i) => (i >= from ? [{ run, i }] : []));
  const leaving = (outside: (start: Instant, end: Instant) => boolean) =>
    moved
      .filter(({ run: { start, end } }) => !outside(start, end))
      .filter(({ run: { start, end } }) => outside(addMinutes(start, minutes), addMinutes(end, minutes)))
      .map(({ i }) => i);
  return {
    beyond: leaving((_, end) => end > hoursEnd),
    before: leaving((start) => start < hoursStart),
    hoursStart,
    hoursEnd,
  };
}

/** Minutes all of `runs` may be late before the first of them leaves the hours; 0 where one has left, null without runs. */
export function minutesToSpare(runs: readonly { readonly end: Instant }[], hoursEnd: Instant): number | null {
  if (runs.length === 0) return null;
  const last = Math.max(...runs.map(({ end }) => end));
  return Math.max(0, Math.floor((hoursEnd - last) / MINUTE_MS));
}
