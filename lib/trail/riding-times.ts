import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { addDays, type ClockProblem, fromLocal, type LocalTime } from '@/lib/time/local';

export type RidingClockProblem = { readonly index: number; readonly problem: ClockProblem };

/**
 * Clock times of one ride in the order they come: one that is earlier on the clock than the one before it is on the
 * next day. Where the clocks go back, the time that keeps the order is taken.
 */
export function ridingTimes(
  date: string,
  clocks: readonly string[],
  zone: string,
): Result<readonly Instant[], RidingClockProblem> {
  const times: Instant[] = [];
  let day = date;
  for (const [index, clock] of clocks.entries()) {
    const before = times.at(-1);
    let read = fromLocal(day, clock, zone);
    if (read.ok && before !== undefined && latest(read.value) < before) {
      day = addDays(day, 1) ?? day;
      read = fromLocal(day, clock, zone);
    }
    if (!read.ok) return fail({ index, problem: read.reason });
    const { at } = read.value;
    times.push(before !== undefined && at < before ? latest(read.value) : at);
  }
  return ok(times);
}

const latest = ({ at, doubled }: LocalTime): Instant => doubled?.later ?? at;
