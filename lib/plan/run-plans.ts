import { logDelivered } from '@/lib/carb/drift';
import { sizesAt } from '@/lib/carb/ideal';
import type { Setting } from '@/lib/carb/machine';
import { relativePower } from '@/lib/power/relative-power';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { type Grade, leanCountOf } from './grade';
import { type MachineNeed, meanLogIdeal } from './machine-need';
import type { Breathed, Night } from './night';
import type { RunOdds } from './run-odds';
import type { Situation } from './situation';
import type { PlanRequest, RunPlan } from './types';

/** The setting of every sorted run: as made, as planned, and where neither is known what was in before. */
export function settingsByRun(
  { done, fitted }: Pick<Situation, 'done' | 'fitted'>,
  open: readonly { readonly run: number; readonly setting: Setting }[],
): readonly Setting[] {
  const planned = new Map(open.map(({ run, setting }) => [run, setting]));
  let current = fitted;
  return done.map((made, run) => {
    const setting = planned.get(run);
    if (setting !== undefined) current = setting;
    return made ?? current;
  });
}

export type RunPlansRequest = {
  readonly request: PlanRequest;
  readonly night: Night;
  readonly need: MachineNeed;
  readonly breathed: Breathed;
  readonly situation: Situation;
  /** By sorted run. */
  readonly odds: readonly RunOdds[];
  readonly settings: readonly Setting[];
  readonly gradeOf: (run: number, setting: Setting) => Grade;
};

export function runPlans(given: RunPlansRequest): readonly RunPlan[] {
  return given.settings.map((setting, run) => runPlan(given, run, setting));
}

function runPlan(given: RunPlansRequest, run: number, setting: Setting): RunPlan {
  const { night, need, breathed, situation, odds, gradeOf } = given;
  const { machine } = given.request;
  const delivered = logDelivered(machine, setting);
  const [lowest, highest] = [Math.min(...delivered), Math.max(...delivered)];
  const ideals = meanLogIdeal(need, breathed.windows[run]!);
  const leanest = ratio(Math.expm1(lowest - Math.max(...ideals)));
  const grade = gradeOf(run, setting);
  const stateOfRun = () => {
    if (night.coverage[run] !== 'covered') return 'beyond-hours';
    return situation.done[run] === null ? 'planned' : 'made';
  };
  return {
    run,
    setting,
    air: night.runAirs[run]!,
    ideal: sizesAt(machine, Math.max(...ideals)),
    leanest,
    richest: ratio(Math.expm1(highest - Math.min(...ideals))),
    chanceOfLean: grade.chanceOfLean,
    leanCount: leanCountOf(odds[run]!, { delivered, leanest: lowest, richest: highest }, machine),
    chanceOfRich: grade.chanceOfRich,
    reserve: ratio(leanest + machine.limits.lean),
    loss: grade.loss,
    relativePower: powerOf(given, run, grade.loss),
    state: stateOfRun(),
  };
}

/** Power in the middle of the run, with what the mixture takes on average over the draws. */
function powerOf({ request, need, breathed }: RunPlansRequest, run: number, loss: Ratio): Ratio {
  const full = relativePower({
    air: breathed.runAirs[run]!,
    baselineAir: need.intake,
    drift: ratio(0),
    richPowerLoss: request.machine.richPowerLoss,
  });
  return ratio(full * (1 - loss));
}
