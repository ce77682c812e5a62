import { sizesAt } from '@/lib/carb/ideal';
import { relativePower } from '@/lib/power/relative-power';
import { ratio } from '@/lib/units/quantity';
import type { Decision } from './decide';
import { leanCountOf } from './grade';
import { meanLogIdeal } from './machine-need';
import type { RunPlan } from './types';
import type { View } from './view';

export function runPlans(view: View, decision: Decision): readonly RunPlan[] {
  return decision.settings.map((_, run) => runPlan(view, decision, run));
}

function runPlan(view: View, { settings, situation }: Decision, run: number): RunPlan {
  const { machine, night, need, breathed, judge } = view;
  const setting = settings[run]!;
  const delivered = view.deliveredOf(setting);
  const ideals = meanLogIdeal(need, breathed.windows[run]!);
  const [lowest, highest] = [Math.min(...ideals), Math.max(...ideals)];
  const leanest = ratio(Math.expm1(delivered.leanest - highest));
  const { chanceOfLean, chanceOfRich, loss } = view.gradeOf(run, setting);
  return {
    run,
    setting,
    air: night.runAirs[run]!,
    givenTemperature: night.runGiven[run]!,
    ideal: sizesAt(machine, highest),
    leanest,
    richest: ratio(Math.expm1(delivered.richest - lowest)),
    chanceOfLean,
    leanCount: leanCountOf(view.odds[run]!, delivered, judge),
    chanceOfRich,
    reserve: ratio(leanest + machine.limits.lean),
    loss,
    relativePower: powerOf(view, run, loss),
    state:
      night.coverage[run] !== 'covered' ? 'beyond-hours' : situation.done[run] === null ? 'planned' : 'made',
  };
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
