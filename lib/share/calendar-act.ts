import type { Run } from '@/lib/plan/types';
import { type Instant, instant } from '@/lib/time/instant';
import type { CallVoice } from '@/lib/words/call';
import type { FeedHours } from '@/lib/words/feed';
import type { ActWindow } from './act-window';
import { quarterHour, settledAt } from './revision';

/** One entry of the calendar. */
export type CalendarAct = ActWindow & {
  /** What tells it from the others of its machine, the same in every poll. */
  readonly key: string;
  readonly cancelled: boolean;
  /** When it was last looked at; stands still once it is settled. */
  readonly revisedAt: Instant;
  readonly summary: string;
  readonly description: readonly string[];
};

export type CalendarContext = {
  readonly clock: Instant;
  readonly sharedAt: Instant;
  readonly swapMinutes: number;
  readonly voice: CallVoice;
  /** What the plans were made with. */
  readonly hours: FeedHours;
};

/** The quarter hour of now, but not after the one in which the run was settled (or shared, where that was later). */
export function revisedAt(run: Run, { clock, sharedAt, swapMinutes }: CalendarContext): Instant {
  return quarterHour(instant(Math.min(clock, Math.max(settledAt(run, swapMinutes), sharedAt))));
}
