import { addMinutes, type Instant } from '@/lib/time/instant';
import type { ClubAct } from './acts';

/** Everything that is due at one moment. */
export type Due = { readonly at: Instant; readonly acts: readonly ClubAct[] };

/** Acts by the moment they are due at, in order of time. */
export function dueTogether(acts: readonly ClubAct[]): readonly Due[] {
  const byMoment = new Map<Instant, ClubAct[]>();
  for (const act of acts) byMoment.set(act.at, [...(byMoment.get(act.at) ?? []), act]);
  return [...byMoment].sort(([a], [b]) => a - b).map(([at, each]) => ({ at, acts: each }));
}

/** Hands that are at one machine are wanted at the next: what comes this soon after the first is one piece of work. */
const ONE_WORK_MINUTES = 30;

/** Whether a moment belongs to the work that starts with the first one that is due. */
export function isNextWork(dues: readonly Due[], { at }: Pick<Due, 'at'>): boolean {
  const [first] = dues;
  return first !== undefined && at <= addMinutes(first.at, ONE_WORK_MINUTES);
}

/** `now`: five minutes to go or less. `soon`: a quarter of an hour or less. */
export type Urgency = 'now' | 'soon' | 'later';

/** How near a moment is, as a wall has to show it. */
export function urgencyOf(at: Instant, now: Instant): Urgency {
  if (at <= addMinutes(now, 5)) return 'now';
  return at <= addMinutes(now, 15) ? 'soon' : 'later';
}
