import { baselineSetting } from '@/lib/carb/baseline-setting';
import { instant } from '@/lib/time/instant';
import { bySwapCount, runnerUp } from './alternatives';
import { decide } from './decide';
import { gradeName, leanCountOf } from './grade';
import { worthOf } from './matrix';
import type { PreparedNight } from './night';
import { picture } from './picture';
import { pressureDoubts } from './pressure-doubts';
import { runPlans } from './run-plans';
import { stintsOf, swapsOf } from './swaps';
import { timeline } from './timeline';
import type { Plan, PlanRequest } from './types';
import { viewOf } from './view';
import { machineWarnings, nightWarnings } from './warnings';

/** Puts a plan together for a request that has been checked, on a night prepared from it. */
export function assemblePlan(request: PlanRequest, night: PreparedNight): Plan {
  const { machine, options } = request;
  const view = viewOf(machine, night);
  const decision = decide(request, view);
  const { situation, open, settings } = decision;
  const swaps = swapsOf({
    fitted: situation.fitted,
    open,
    swapMinutes: options.swapMinutes,
    gradeOf: view.gradeOf,
    nameOf: (grade) => gradeName(grade, view.judge),
    countOf: (run, setting) =>
      leanCountOf(view.gradeOf(run, setting).chanceOfLean, machine.limits.risk, night.normals.draws),
  });
  const runs = runPlans(view, decision);
  const baseline = baselineSetting(machine);
  return {
    hours: picture(view, timeline(night, situation, { settings, swaps })),
    /** Worked out when they are asked for: most plans of a field of racers never are. */
    get crossings() {
      return view.crossingsOf(baseline);
    },
    runs,
    order: night.order,
    sortedRuns: night.sortedRuns,
    stints: stintsOf(runs.filter(({ state }) => state !== 'beyond-hours' && state !== 'out')),
    swaps,
    bySwapCount: bySwapCount(view, decision),
    runnerUp: runnerUp(decision),
    kept: decision.steady.kept,
    warnings: [
      ...nightWarnings(night),
      ...pressureDoubts(machine, night.series),
      ...machineWarnings(view, decision, options.swapMinutes),
    ],
    hoursEnd: instant(night.hours.at.at(-1)!),
    baseline,
    worth: {
      swap: worthOf(machine, options, situation),
      ratedPower: machine.ratedPower,
      ...(situation.reads && options.worthIt === null ? { doubled: true } : {}),
    },
    inNow: situation.inNow,
  };
}
