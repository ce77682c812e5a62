import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from '@/lib/night/living-demo';
import { type Night, type NightRecords, nightFrom } from '@/lib/night/night';
import type { Plan } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import type { Standing } from '@/lib/standing/standing';
import { type Instant, instant } from '@/lib/time/instant';
import { followedDemo } from '@/tests/support/followed-demo';
import { standNight } from '@/tests/support/stand-night';

/** A local time of the demo night's zone in January, when Chicago is six hours behind UTC. */
export function chicago(date: string, clock: string): Instant {
  return instant(Date.parse(`${date}T${clock}:00-06:00`));
}

export const BEFORE_THE_FIRST_RUN = chicago('2027-01-16', '18:15');

export function demoRecords(now: Instant): NightRecords {
  const { event, machine } = followedDemo(now);
  const stored = { revision: 1, updatedAt: '2027-01-16T00:00:00Z' };
  return {
    event: { id: DEMO_EVENT_ID, ...stored, value: event },
    machine: { id: DEMO_MACHINE_ID, ...stored, value: machine },
    box: null,
    forecast: null,
    log: [],
  };
}

export type NightCase = {
  readonly night: Night;
  readonly standing: Standing;
  readonly plan: Plan;
  readonly now: Instant;
};

export function nightAt(night: Night, now: Instant): NightCase {
  const standing = expectOk(standNight(night, now));
  return { night, standing, plan: standing.plan, now };
}

/** The demo night as the page would have it at a moment. */
export function nightCase(now: Instant = BEFORE_THE_FIRST_RUN): NightCase {
  return nightAt(expectOk(nightFrom(demoRecords(now))), now);
}
