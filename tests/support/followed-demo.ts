import { demoNight, demoRequest } from '@/lib/night/demo-night';
import type { DemoNight } from '@/lib/night/demo-records';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';

/** The demo as the page shows it at a moment, planned in place. */
export function followedDemo(now: Instant): DemoNight {
  const request = demoRequest(now);
  return demoNight(now, request === null ? null : expectOk(makePlan(request)));
}
