import type { Air } from '@/lib/air/air';
import type { Machine, Setting } from '@/lib/carb/machine';
import { type NeedleAdvice, needleFor } from '@/lib/carb/needle';
import { type PilotAdvice, pilotFor } from '@/lib/carb/pilot';
import { machineAirShift } from '@/lib/carb/response';
import type { PlanProblem, PlanWarning, RunPlan } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import type { Ratio } from '@/lib/units/quantity';
import { planAt } from './ask-planner';

/** A kind of day that a rider sets the machine up for. */
export type Condition = { readonly name: string; readonly air: Air };

/** The machine set up for one condition. */
export type SeasonSetup = {
  readonly condition: Condition;
  /** Mains and trim as the planner would have them, the baseline's unless a change is worth it. */
  readonly setting: Setting;
  /** Ideal main of each carburettor, not rounded. */
  readonly ideal: readonly number[];
  readonly leanest: Ratio;
  readonly leanCount: RunPlan['leanCount'];
  /** null where the machine's pilot or needle was not described. */
  readonly pilot: PilotAdvice | null;
  readonly needle: NeedleAdvice | null;
  /** ln of the fuel wanted over the baseline's: what pilot and needle follow. */
  readonly logNeed: number;
  /** Expected power over the baseline's in its own air. */
  readonly relativePower: Ratio;
  readonly warnings: readonly PlanWarning[];
};

/** The fuel a pilot or a needle is asked for in given weather, ln over the baseline's: the orifice law. */
export function circuitNeed(machine: Machine, air: Air): number {
  return machineAirShift(machine, air).need;
}

/** Screw, pilot, needle, main, trim, power and density for one condition. */
export function seasonSetup(machine: Machine, condition: Condition): Result<SeasonSetup, PlanProblem> {
  const asked = planAt(machine, condition.air, null);
  if (!asked.ok) return asked;
  const { runs, warnings } = asked.value;
  const run = runs[0]!;
  const logNeed = circuitNeed(machine, condition.air);
  return ok({
    condition,
    setting: run.setting,
    ideal: run.ideal,
    leanest: run.leanest,
    leanCount: run.leanCount,
    pilot: machine.pilot === null ? null : pilotFor(machine.pilot, logNeed),
    needle: machine.needle === null ? null : needleFor(machine.needle, logNeed, machine.limits.lean),
    logNeed,
    relativePower: run.relativePower,
    warnings,
  });
}
