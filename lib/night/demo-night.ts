import { runsFromEvent } from '@/lib/contract/event-from-json';
import { expectOk } from '@/lib/result/result';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { type DemoNight, demoAsSet, demoStart } from './demo-records';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from './living-demo';
import { nightFrom } from './night';
import { planNight } from './plan-night';
import { withFitted, withMade } from './records';

/** An invented night, dated tonight where it is set: what the app shows before anything has been entered. */
export function demoNight(now: Instant): DemoNight {
  const demo = demoAsSet(now);
  const start = demoStart(demo) ?? now;
  return now <= start ? demo : { ...demo, event: asFollowed(demo, start, now) };
}

/** Opened in the middle of its night, the demo shows a racer who has gone by the call so far. */
function asFollowed({ event, machine }: DemoNight, start: Instant, now: Instant): EventRecord {
  const runs = runsFromEvent(event.event);
  const stored = { revision: 0, updatedAt: '' };
  const night = expectOk(
    nightFrom({
      event: { id: DEMO_EVENT_ID, ...stored, value: event },
      machine: { id: DEMO_MACHINE_ID, ...stored, value: machine },
      box: null,
      forecast: null,
      log: [],
    }),
  );
  const plan = expectOk(planNight(night, start));
  const made = plan.runs
    .filter(({ run }) => (runs[run]?.end ?? now) <= now)
    .reduce(
      (record, { run, setting }) => withMade(record, { machineId: DEMO_MACHINE_ID, run, setting }),
      event,
    );
  const swap = plan.swaps.findLast(({ latestStart }) => latestStart <= now);
  const setting = swap?.to ?? plan.runs[0]?.setting ?? night.fitted;
  return withFitted(made, DEMO_MACHINE_ID, { at: swap?.latestStart ?? start, setting });
}
