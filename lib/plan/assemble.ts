import { baselineSetting } from '@/lib/carb/baseline-setting';
import { instant } from '@/lib/time/instant';
import { bySwapCount, runnerUp } from './alternatives';
import { type Decision, decide } from './decide';
import { gradeName, leanCountOf } from './grade';
import { worthOf } from './matrix';
import { picture } from './picture';
import { pressureDoubts } from './pressure-doubts';
import { runPlans } from './run-plans';
import type { Situation } from './situation';
import { stintsOf, swapsOf } from './swaps';
import { timeline } from './timeline';
import type { Plan, PlanRequest, Swap } from './types';
import type { View } from './view';
import { machineWarnings } from './warnings';

/** Puts a plan together for a request that has been checked, on a view of its machine in its night. */
export function assemblePlan(request: PlanRequest, view: View): Plan {
  const { machine, options } = request;
  const { night } = view;
  const decision = decide(request, view);
  const { situation, settings } = decision;
  const swaps = plannedSwaps(view, decision, options.swapMinutes);
  const { crossingsOf } = view;
  const runs = runPlans(view, decision);
  const baseline = baselineSetting(machine);
  return {
    hours: picture(view, timeline(night, situation, { settings, swaps })),
    /**
     * Worked out when they are asked for: most plans of a field of racers never are. Nothing but this function may be held
     * on to for it: with the view, every plan would keep the draws of all its runs in memory.
     */
    get crossings() {
      return crossingsOf(baseline);
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
      ...night.warnings,
      ...pressureDoubts(machine, night.series),
      ...machineWarnings(view, decision, options.swapMinutes),
    ],
    hoursEnd: instant(night.hours.at.at(-1)!),
    baseline,
    worth: toldWorth(request, situation),
    inNow: situation.inNow,
  };
}

function plannedSwaps(view: View, { situation, open }: Decision, swapMinutes: number): readonly Swap[] {
  const { machine, night, judge } = view;
  return swapsOf({
    fitted: situation.fitted,
    open,
    swapMinutes,
    gradeOf: view.gradeOf,
    nameOf: (grade) => gradeName(grade, judge),
    countOf: (run, setting) =>
      leanCountOf(view.gradeOf(run, setting).chanceOfLean, machine.limits.risk, night.normals.draws),
  });
}

function toldWorth({ machine, options }: PlanRequest, situation: Situation): Plan['worth'] {
  const worth = { swap: worthOf(machine, options, situation), ratedPower: machine.ratedPower };
  return situation.reads && options.worthIt === null ? { ...worth, doubled: true } : worth;
}
