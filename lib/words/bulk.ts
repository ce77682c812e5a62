import type { Setting } from '@/lib/carb/machine';
import type { Briefing } from '@/lib/club/briefing';
import { dueTogether } from '@/lib/club/due';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { counted } from './listing';
import { planClock } from './runs';
import { clockText } from './times';

/** What several racers were to have in by one moment. */
export type BulkMoment = {
  readonly at: Instant;
  /** On the clock of the event. */
  readonly clock: string;
  readonly told: readonly {
    readonly racerId: string;
    readonly setting: Setting;
    /** Absent: since now. */
    readonly since: Instant | undefined;
  }[];
};

/** One racer has a button of his own. */
const LEAST_TOGETHER = 2;

/** Moments to come at which several racers swap: "all of 18:45". A racer stands in the first of his moments only. */
export function momentsToCome(briefing: Briefing, zone: ClockZone): readonly BulkMoment[] {
  const seen = new Set<string>();
  return together(
    dueTogether(briefing.acts).map(({ at, acts }) => {
      const firsts = acts.filter(({ racerId }) => !seen.has(racerId));
      for (const { racerId } of acts) seen.add(racerId);
      return {
        at,
        clock: clockOf(briefing, at, zone),
        told: firsts.map(({ racerId, swap }) => ({ racerId, setting: swap.to, since: undefined })),
      };
    }),
  );
}

/** The same of swaps whose time is over and of which nobody said anything: in since then, as planned. */
export function momentsOver(briefing: Briefing, zone: ClockZone): readonly BulkMoment[] {
  const byMoment = new Map<Instant, BulkMoment['told'][number][]>();
  for (const { racer, standing } of briefing.planned) {
    if (standing.question === null) continue;
    const { to, since } = standing.question;
    const told = { racerId: racer.id, setting: to, since };
    byMoment.set(since, [...(byMoment.get(since) ?? []), told]);
  }
  return together(
    [...byMoment]
      .sort(([a], [b]) => a - b)
      .map(([at, told]) => ({ at, clock: clockOf(briefing, at, zone), told })),
  );
}

const together = (moments: readonly BulkMoment[]): readonly BulkMoment[] =>
  moments.filter(({ told }) => told.length >= LEAST_TOGETHER);

function clockOf({ planned }: Briefing, at: Instant, zone: ClockZone): string {
  const plan = planned[0]?.plan;
  return clockText(at, plan === undefined ? { zone } : planClock(plan, zone));
}

/** "All of 18:45 are in: 12 racers". */
export function bulkLabel({ clock, told }: BulkMoment): string {
  return `All of ${clock} are in: ${counted(told.length, 'racer')}`;
}
