import { instantFromJson } from '@/lib/contract/event-from-json';
import { expectOk } from '@/lib/result/result';
import type { EventRecord } from '@/lib/store/records';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { localDate } from '@/lib/time/zone';

export const DEMO_EVENT_ID = 'demo-night';
export const DEMO_MACHINE_ID = 'demo-machine';

export const DEMO_ZONE = 'America/Chicago';
const FIRST_RUN = '19:00';
export const DEMO_RUNS = 8;
const EVERY_MINUTES = 45;

/** The evening shown at `now`: the one whose last run is the next last run to start, in the demo's zone. */
export function demoDate(now: Instant): string {
  const date = localDate(now, DEMO_ZONE);
  const before = addDays(date, -1) ?? date;
  return startOfDemoRun(before, DEMO_RUNS - 1) >= now ? before : date;
}

/** Whether a stored demo night still has something to show: a run to come, on an evening that is not a later one. */
export function isLiving({ event }: EventRecord, now: Instant): boolean {
  const starts = event.runs.map(({ start }) => instantFromJson(start));
  const first = Math.min(...starts);
  return starts.some((start) => start >= now) && localDate(instant(first), DEMO_ZONE) <= demoDate(now);
}

/** When a run of the evening of `date` starts; runs count from 0. */
export function startOfDemoRun(date: string, run: number): Instant {
  return addMinutes(expectOk(fromLocal(date, FIRST_RUN, DEMO_ZONE)).at, run * EVERY_MINUTES);
}
