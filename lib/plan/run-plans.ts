import { sizesAt } from '@/lib/carb/ideal';
import { relativePower } from '@/lib/power/relative-power';
import { ratio } from '@/lib/units/quantity';
import type { Decision } from './decide';
import { gradeName, leanCountOf } from './grade';
import { meanLogIdealRange } from './machine-need';
import type { PastRun } from './situation';
import type { RunPlan } from './types';
import type { View } from './view';

export function runPlans(view: View, decision: Decision): readonly RunPlan[] {
  return decision.settings.map((_, run) => runPlan(view, decision, run));
}

function runPlan(view: View, { settings, situation }: Decision, run: number): RunPlan {
  const { machine, night, need, breathed, judge } = view;
  const setting = settings[run]!;
  const delivered = view.deliveredOf(setting);
  const { lowest, highest } = meanLogIdealRange(need, breathed.windows[run]!);
  const leanest = ratio(Math.expm1(delivered.leanest - highest));
  const { chanceOfLean, chanceOfRich, loss } = view.gradeOf(run, setting);
  const kept = view.gradeOf(run, situation.fitted);
  const countOf = (chance: number) => leanCountOf(chance, judge.limits.risk, night.normals.draws);
  return {
    run,
    setting,
    air: night.runAirs[run]!,
    givenTemperature: night.runGiven[run]!,
    ideal: sizesAt(machine, highest),
    leanest,
    richest: ratio(Math.expm1(delivered.richest - lowest)),
    chanceOfLean,
    leanCount: countOf(chanceOfLean),
    grade: gradeName({ chanceOfLean, chanceOfRich, loss }, judge),
    ifKept: {
      grade: gradeName(kept, judge),
      leanCount: countOf(kept.chanceOfLean),
    },
    chanceOfRich,
    reserve: ratio(leanest + machine.limits.lean),
    loss,
    relativePower: powerOf(view, run, loss),
    state: situation.out.includes(run)
      ? 'out'
      : stateOf(night.coverage[run] === 'covered', situation.done[run] ?? null),
  };
}

function stateOf(covered: boolean, done: PastRun | null): RunPlan['state'] {
  if (done?.told === true) return 'made';
  if (!covered) return 'beyond-hours';
  return done === null ? 'planned' : 'past';
}

/** Power in the middle of the run, with what the mixture takes on average over the draws. */
function powerOf({ machine, need, breathed }: View, run: number, loss: number) {
  const full = relativePower({
    air: breathed.runAirs[run]!,
    baselineAir: need.intake,
    drift: ratio(0),
    richPowerLoss: machine.richPowerLoss,
  });
  return ratio(full * (1 - loss));
}
