import type { Night, NightProblem } from '@/lib/night/night';
import { makePlan } from '@/lib/plan/make-plan';
import type { Plan } from '@/lib/plan/types';
import { fail, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';

/** The plan of a night, made in place. */
export function planNight(night: Night, now: Instant): Result<Plan, NightProblem> {
  const plan = makePlan({ ...night.request, now });
  return plan.ok ? plan : fail({ code: 'plan', problem: plan.reason });
}
