import { planProblemPath } from '@/lib/contract/plan-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import { planMany } from '@/lib/plan/make-plan';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Standing, standingOf } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import { nightRequests, sharedSeries } from './night-requests';
import type { SharedMachine, SharedNight } from './shared-night';

export type PreviewedPlan = {
  readonly shared: SharedMachine;
  /** Among the machines of the night, from 0; two may have one name. */
  readonly place: number;
  readonly standing: Result<Standing, ContractProblem>;
};

/** The plan of every machine of a shared night with the hours it carries, or everything that keeps it from being read. */
export function previewedPlans(
  night: SharedNight,
  now: Instant,
): Result<readonly PreviewedPlan[], readonly ContractProblem[]> {
  const series = sharedSeries(night);
  if (!series.ok) return series;
  const requests = nightRequests(night, { series: series.value, now });
  if (!requests.ok) return requests;
  const plans = planMany(requests.value);
  return ok(
    plans.map((plan, i) => ({
      shared: night.machines[i]!,
      place: i,
      standing: plan.ok
        ? ok(standingOf(requests.value[i]!, plan.value))
        : fail({ path: planProblemPath(plan.reason, ['machines', i]), reason: plan.reason }),
    })),
  );
}
