import { fail, ok, type Result } from '@/lib/result/result';
import { assemblePlan } from './assemble';
import { planProblem } from './check';
import { roomUsedAgain } from './draw-needs';
import { type NightRequest, type PreparedNight, prepareNight } from './night';
import type { Plan, PlanProblem, PlanRequest } from './types';
import { type View, viewOf } from './view';
import { workProblem } from './work';

/**
 * The plan of a night: which jets in which run, when to swap, how sure. The same request always gives the same plan;
 * `now`, the seed and the weather are in it.
 */
export function makePlan(request: PlanRequest): Result<Plan, PlanProblem> {
  const problem = planProblem(request);
  return problem === null
    ? ok(assemblePlan(request, viewOf(request.machine, prepareNight(request))))
    : fail(problem);
}

/** Plans one machine after another; what the same night has in common is done once, when it is first needed. */
export function nightPlanner(): (request: PlanRequest) => Result<Plan, PlanProblem> {
  // A plan holds on to nothing of its view, so the next one can have its memory.
  const room = roomUsedAgain();
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
    return problem === null
      ? ok(assemblePlan(request, viewOf(request.machine, nightOf(request), room)))
      : fail(problem);
  };
}

/** Nights with their machine that a keeping planner has at hand: the one on screen and the one before. */
const MOST_KEPT = 2;

/**
 * The same plans for somebody who asks again and again about one machine in one night, as a page does with every jet that
 * is fitted and every run that is made. The weather, the draws, the ideal jets and their chances hang on neither, so the
 * last of them are kept, told by all that they do hang on; requests that came from another thread are never the same
 * objects.
 */
export function keepingPlanner(): (request: PlanRequest) => Result<Plan, PlanProblem> {
  const kept = new Map<string, View>();
  return (request) => {
    const problem = planProblem(request);
    if (problem !== null) return fail(problem);
    const { machine, runs, series, readings, now, placeOffset, options } = request;
    const { scenarios, seed } = options;
    const key = JSON.stringify({ machine, runs, series, readings, now, placeOffset, scenarios, seed });
    const view = kept.get(key) ?? viewOf(machine, prepareNight(request));
    // Taken out and put back, it is the latest.
    kept.delete(key);
    kept.set(key, view);
    for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
    return ok(assemblePlan(request, view));
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
