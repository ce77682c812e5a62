import { fail, ok, type Result } from '@/lib/result/result';
import { assemblePlan } from './assemble';
import { planProblem } from './check';
import { type NightRequest, type PreparedNight, prepareNight } from './night';
import type { Plan, PlanProblem, PlanRequest } from './types';
import { workProblem } from './work';

/**
 * The plan of a night: which jets in which run, when to swap, how sure. The same request always gives the same plan;
 * `now`, the seed and the weather are in it.
 */
export function makePlan(request: PlanRequest): Result<Plan, PlanProblem> {
  const problem = planProblem(request);
  return problem === null ? ok(assemblePlan(request, prepareNight(request))) : fail(problem);
}

/** Plans one machine after another; what the same night has in common is done once, when it is first needed. */
export function nightPlanner(): (request: PlanRequest) => Result<Plan, PlanProblem> {
  const nights: { readonly request: NightRequest; readonly night: PreparedNight }[] = [];
  const nightOf = (request: PlanRequest) => {
    const known = nights.find((each) => isSameNight(each.request, request))?.night;
    if (known !== undefined) return known;
    const night = prepareNight(request);
    nights.push({ request, night });
    return night;
  };
  return (request) => {
    const problem = planProblem(request);
    return problem === null ? ok(assemblePlan(request, nightOf(request))) : fail(problem);
  };
}

/** Plans of many machines, answers in the order of the requests; all or none where they are too much at once. */
export function planMany(requests: readonly PlanRequest[]): readonly Result<Plan, PlanProblem>[] {
  const problem = workProblem(requests);
  return problem === null ? requests.map(nightPlanner()) : requests.map(() => fail(problem));
}

/** Told by identity: an event hands the same lists to all its machines. */
function isSameNight(a: NightRequest, b: NightRequest): boolean {
  return (
    a.series === b.series &&
    a.runs === b.runs &&
    a.readings === b.readings &&
    a.now === b.now &&
    a.options.scenarios === b.options.scenarios &&
    a.options.seed === b.options.seed
  );
}
