import { clockOf } from '@/lib/fields/clock-text';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { localDate } from '@/lib/time/zone';

export type ReadingTimeProblem = 'not-a-clock' | 'not-yet' | 'missing-hour';

/** A watch may run ahead by this much. */
const AHEAD_MS = 2 * MINUTE_MS;

type Around = {
  readonly now: Instant;
  readonly zone: string;
  /** The reading's own time where it is edited: an older day than the last one is kept. */
  readonly was: Instant | null;
};

/** The last moment at which the clock at the track showed this time: at 00:10, "23:50" was twenty minutes ago. */
export function readingTime(text: string, { now, zone, was }: Around): Result<Instant, ReadingTimeProblem> {
  const clock = clockOf(text);
  if (clock === null) return fail('not-a-clock');
  const last = was ?? now;
  const today = localDate(last, zone);
  const found = [0, -1].map((days) => fromLocal(addDays(today, days) ?? today, clock, zone));
  const times = found.flatMap((each) =>
    each.ok ? [each.value.at, ...(each.value.doubled === null ? [] : [each.value.doubled.later])] : [],
  );
  const past = times.filter((at) => at <= now + AHEAD_MS);
  const near = was === null ? past : past.filter((at) => Math.abs(at - was) <= 12 * 60 * MINUTE_MS);
  const at = (near.length > 0 ? near : past).sort((a, b) => b - a)[0];
  if (at !== undefined) return ok(at);
  return fail(times.length === 0 ? 'missing-hour' : 'not-yet');
}

const WORDS: Readonly<Record<ReadingTimeProblem, string>> = {
  'not-a-clock': 'Type the time on the clock at the track, such as 19:40 or 7:40 pm.',
  'not-yet': 'That time has not come yet. A reading is of now or earlier.',
  'missing-hour': 'The clocks jump over that time today. Type the time the clock shows.',
};

export function readingTimeWords(problem: ReadingTimeProblem): string {
  return WORDS[problem];
}
