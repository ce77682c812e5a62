import { runsFromEvent } from '@/lib/contract/event-from-json';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { type DemoNight, demoAsSet, demoStart } from './demo-records';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from './living-demo';
import { type Night, nightFrom } from './night';
import { withFitted, withMade } from './records';

/** What has to be planned before the demo can be shown at `now`: its call as its first run starts. null before then. */
export function demoRequest(now: Instant): PlanRequest | null {
  const demo = demoAsSet(now);
  const start = demoStart(demo) ?? now;
  return now <= start ? null : { ...nightOfDemo(demo).request, now: start };
}

/**
 * An invented night, dated tonight where it is set: what the app shows before anything has been entered. Opened in the
 * middle of its night, it shows a racer who has gone by the call so far: `plan` is the one of `demoRequest`.
 */
export function demoNight(now: Instant, plan: Plan | null): DemoNight {
  const demo = demoAsSet(now);
  return plan === null ? demo : { ...demo, event: asFollowed(demo, plan, now) };
}

/** The demo as a night that can be planned. */
export function nightOfDemo({ event, machine }: DemoNight): Night {
  const stored = { revision: 0, updatedAt: '' };
  return expectOk(
    nightFrom({
      event: { id: DEMO_EVENT_ID, ...stored, value: event },
      machine: { id: DEMO_MACHINE_ID, ...stored, value: machine },
      box: null,
      forecast: null,
      log: [],
    }),
  );
}

function asFollowed(demo: DemoNight, plan: Plan, now: Instant): EventRecord {
  const runs = runsFromEvent(demo.event.event);
  const made = plan.runs
    .filter(({ run }) => (runs[run]?.end ?? now) <= now)
    .reduce(
      (record, { run, setting }) => withMade(record, { machineId: DEMO_MACHINE_ID, run, setting }),
      demo.event,
    );
  const swap = plan.swaps.findLast(({ latestStart }) => latestStart <= now);
  const setting = swap?.to ?? plan.runs[0]?.setting ?? nightOfDemo(demo).fitted;
  return withFitted(made, DEMO_MACHINE_ID, { at: swap?.latestStart ?? demoStart(demo) ?? now, setting });
}
