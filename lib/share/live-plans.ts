import { baselineSetting } from '@/lib/carb/baseline-setting';
import type { Setting } from '@/lib/carb/machine';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { planProblemPath } from '@/lib/contract/plan-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import { type AcceptedPlan, acceptedPlan, comparedAccepted } from '@/lib/plan/accepted-plan';
import type { PlanDifference } from '@/lib/plan/compared';
import { comparePlans } from '@/lib/plan/difference';
import { planMany } from '@/lib/plan/make-plan';
import { orderOfRuns } from '@/lib/plan/night';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { Plan, PlanProblem, PlanRequest, Run } from '@/lib/plan/types';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Standing, standingOf } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import { nightRequests, sharedSeries } from './night-requests';
import { quarterHour, settledAt } from './revision';
import type { SharedNight } from './shared-night';

/** One machine of a shared night, planned again with the hours of now. */
export type LivePlan = {
  readonly name: string;
  readonly sortedRuns: readonly Run[];
  /** What was accepted, or was the plan when the night was shared; null where neither is known. */
  readonly accepted: AcceptedPlan | null;
  /** What is true by the plan of now, with the plan in it; null where no hours cover what is to come. */
  readonly standing: Standing | null;
  /** From the accepted plan to this one; null where there are not two plans. */
  readonly difference: PlanDifference | null;
  /** By sorted run: nothing can be changed for it any more. */
  readonly settled: readonly boolean[];
  /** What the accepted plan says is in the engine now; null before anything is settled. */
  readonly takenToBeFitted: Setting | null;
};

type Given = {
  /** null: there are none newer than those that were shared, and those are not to be used either. */
  readonly series: HourSeries | null;
  readonly clock: Instant;
};

/**
 * Every machine of a shared night, planned with the given hours at this quarter of an hour. What is settled stays as it
 * was made or accepted, whatever the hours say now. The same night, hours and quarter of an hour give the same plans.
 */
export function livePlans(
  night: SharedNight,
  { series, clock }: Given,
): Result<readonly LivePlan[], readonly ContractProblem[]> {
  const shared = sharedSeries(night);
  if (!shared.ok) return shared;
  const requests = nightRequests(night, { series: shared.value, now: instantFromJson(night.sharedAt) });
  if (!requests.ok) return requests;
  if (night.event.runs.length === 0) return fail([{ path: ['event', 'runs'], reason: { code: 'no-runs' } }]);
  const bases = plansOf(requests.value, shared.value);
  if (!bases.ok) return bases;
  const situations = requests.value.map((request, i) =>
    situationOf(request, { base: bases.value[i] ?? null, clock, sharedAt: requests.value[0]!.now }),
  );
  const hours = series ?? { ...shared.value, hours: [] };
  const now = quarterHour(clock);
  const asked = situations.map(({ request }) => ({ ...request, series: hours, now }));
  const lives = plansOf(asked, hours);
  if (!lives.ok) return lives;
  return ok(
    situations.map((situation, i) => {
      const plan = lives.value[i] ?? null;
      return livePlan(situation, plan === null ? null : standingOf(asked[i]!, plan));
    }),
  );
}

/** A plan for each request, null where the hours do not reach, or why a machine can have none. */
function plansOf(
  requests: readonly PlanRequest[],
  { hours }: HourSeries,
): Result<readonly (Plan | null)[], readonly ContractProblem[]> {
  if (hours.length === 0) return ok(requests.map(() => null));
  const plans = planMany(requests);
  const problems = plans.flatMap((plan, i): readonly ContractProblem[] =>
    plan.ok || lacksHours(plan.reason)
      ? []
      : [{ path: planProblemPath(plan.reason, ['machines', i]), reason: plan.reason }],
  );
  return problems.length > 0 ? fail(problems) : ok(plans.map((plan) => (plan.ok ? plan.value : null)));
}

function lacksHours({ code }: PlanProblem): boolean {
  return code === 'no-hours' || code === 'hours-do-not-cover-any-run';
}

type Situation = Omit<LivePlan, 'standing' | 'difference'> & {
  readonly request: PlanRequest;
  readonly base: Plan | null;
};

type SituationGiven = {
  readonly base: Plan | null;
  readonly clock: Instant;
  readonly sharedAt: Instant;
};

/** What is settled by now, and the request for what is not. */
function situationOf(request: PlanRequest, { base, clock, sharedAt }: SituationGiven): Situation {
  const { runs, machine, options } = request;
  const order = orderOfRuns(runs);
  const made = new Map(request.made.map(({ run, setting }) => [run, setting]));
  const decided = (run: Run) => settledAt(run, options.swapMinutes);
  const settled = order.map((given) => made.has(given) || decided(runs[given]!) <= clock);
  const given = request.accepted ?? (base === null ? null : settingsAsGiven(base));
  const sortedRuns = order.map((run) => runs[run]!);
  const common = { name: machine.name, sortedRuns, settled, request, base };
  if (given === null) return { ...common, accepted: null, takenToBeFitted: null };
  const settings = order.map((run) => made.get(run) ?? given[run]!);
  const accepted = acceptedPlan(sortedRuns, settings, request.fitted ?? baselineSetting(machine));
  const last = settled.lastIndexOf(true);
  // What was told to be in the engine when the night was shared is newer than runs that were settled before.
  const since = last >= 0 && (request.fitted === null || decided(sortedRuns[last]!) > sharedAt);
  const takenToBeFitted = since ? settings[last]! : null;
  return {
    ...common,
    accepted,
    takenToBeFitted,
    request: {
      ...request,
      accepted: given,
      fitted: takenToBeFitted ?? request.fitted,
      made: order.flatMap((run, i) => (settled[i] === true ? [{ run, setting: settings[i]! }] : [])),
    },
  };
}

function livePlan({ request: _, base, ...situation }: Situation, standing: Standing | null): LivePlan {
  const { accepted } = situation;
  if (accepted === null || standing === null) return { ...situation, standing, difference: null };
  const { plan } = standing;
  const difference = comparePlans(comparedAccepted(accepted, base ?? plan), plan);
  return { ...situation, standing, difference };
}
