import type { Night, NightProblem } from '@/lib/night/night';
import { ok, type Result } from '@/lib/result/result';
import { type Standing, standingOf } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import { planNight } from '@/tests/support/plan-night';

/** What is true of a night now, with the plan it comes from, made in place. */
export function standNight(night: Night, now: Instant): Result<Standing, NightProblem> {
  const plan = planNight(night, now);
  return plan.ok ? ok(standingOf({ ...night.request, now }, plan.value)) : plan;
}
