import type { BoardNight } from '@/lib/contract/board';
import { runsFromEvent } from '@/lib/contract/event-from-json';
import type { Run } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';

const KEPT_MS = 48 * HOUR_MS;

/** Every run of a board, of the event and of the classes. */
export function allRuns({ event, machines }: Pick<BoardNight, 'event' | 'machines'>): readonly Run[] {
  return [event, ...machines.flatMap(({ runs }) => (runs === undefined ? [] : [{ runs }]))].flatMap(
    runsFromEvent,
  );
}

/** When everything of a board is gone: 48 hours after the end of its last run; of `now` where it has none. */
export function expiryOf(night: Pick<BoardNight, 'event' | 'machines'>, now: Instant): Instant {
  const ends = allRuns(night).map(({ end }) => end);
  return instant((ends.length === 0 ? now : Math.max(...ends)) + KEPT_MS);
}
