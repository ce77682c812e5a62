import { baselineSetting } from '@/lib/carb/baseline-setting';
import { logDelivered } from '@/lib/carb/drift';
import type { Setting } from '@/lib/carb/machine';
import { instant } from '@/lib/time/instant';
import { bySwapCount, runnerUp } from './alternatives';
import { candidatesFor, indexOfSetting } from './candidates';
import { crossingsOf, leavesLane, type NightIdeals } from './crossings';
import { type Delivered, type Grade, gradeOf, leanThreshold, richThreshold } from './grade';
import { type MachineNeed, machineNeed, meanLogIdeal } from './machine-need';
import { choiceOf, gradeAll } from './matrix';
import { withFuel } from './need-curve';
import type { Breathed, Night } from './night';
import { optimise } from './optimise';
import { picture } from './picture';
import { drawnIdeals, needLines, type RunOdds, runOdds } from './run-odds';
import { runPlans, settingsByRun } from './run-plans';
import { situationOf } from './situation';
import { keepSteady } from './steady';
import { stintsOf, swapsOf } from './swaps';
import { timeline } from './timeline';
import type { Plan, PlanRequest } from './types';
import { machineWarnings, nightWarnings } from './warnings';

/** The night as this machine breathes it, its fuel's own density included where that counts. */
function breathedBy({ machine }: PlanRequest, night: Night): Breathed {
  const breathed = night.breathe(machine.intakeOffset);
  if (machine.fuelDensity === null) return breathed;
  return {
    ...breathed,
    windows: breathed.windows.map((curve, i) =>
      withFuel(curve, night.windows[i]!.track, machine.fuelDensity),
    ),
    hours: withFuel(breathed.hours, night.hours, machine.fuelDensity),
    grid: withFuel(breathed.grid, night.grid, machine.fuelDensity),
  };
}

function nightIdeals(need: MachineNeed, night: Night, breathed: Breathed): NightIdeals {
  const window = { track: night.grid, draws: night.gridDraws, centre: 0 };
  const lines = needLines({ machine: need, curve: breathed.grid, window, normals: night.normals });
  return {
    at: night.grid.at,
    drawn: drawnIdeals(lines),
    draws: lines.draws,
    mean: meanLogIdeal(need, breathed.grid),
  };
}

/** Grades settings in runs as they are asked about, each once. */
function gradeBook(request: PlanRequest, odds: readonly RunOdds[]) {
  const known = new Map<string, Grade>();
  return (run: number, setting: Setting): Grade => {
    const key = `${run} ${setting.trim} ${setting.mains.join('/')}`;
    const grade = known.get(key) ?? gradeOf(odds[run]!, deliveredOf(request, setting), request.machine);
    known.set(key, grade);
    return grade;
  };
}

function deliveredOf({ machine }: PlanRequest, setting: Setting): Delivered {
  const delivered = logDelivered(machine, setting);
  return { delivered, leanest: Math.min(...delivered), richest: Math.max(...delivered) };
}

/** Puts a plan together for a request that has been checked, on a night prepared from it. */
export function assemble(request: PlanRequest, night: Night): Plan {
  const { machine, options } = request;
  const need = machineNeed(machine);
  const breathed = breathedBy(request, night);
  const situation = situationOf(request, night);
  const odds = night.windows.map((window, i) =>
    runOdds({ machine: need, curve: breathed.windows[i]!, window, normals: night.normals }),
  );
  const openOdds = situation.open.map((run) => odds[run]!);
  const candidates = candidatesFor(machine, situation.fitted);
  const runs = situation.open.map((run) => night.sortedRuns[run]!);
  const grades = gradeAll(machine, openOdds, candidates);
  const start = indexOfSetting(candidates, situation.fitted);
  const choice = choiceOf({ machine, candidates, grades, runs, situation, start, options });
  const fresh = optimise(choice);
  const accepted = situation.accepted?.map((setting) => indexOfSetting(candidates, setting)) ?? null;
  const steady = keepSteady(choice, fresh, accepted);
  const open = situation.open.map((run, i) => ({
    run,
    timed: runs[i]!,
    setting: candidates[steady.plan[i]!]!.setting,
    gap: situation.gaps[i]!,
  }));
  const settings = settingsByRun(situation, open);
  const ideals = nightIdeals(need, night, breathed);
  const crossings = (setting: Setting) => {
    const delivered = deliveredOf(request, setting);
    return crossingsOf(ideals, {
      lean: leanThreshold(delivered, machine),
      rich: richThreshold(delivered, machine),
    });
  };
  const baseline = baselineSetting(machine);
  const grade = gradeBook(request, odds);
  const swaps = swapsOf({
    fitted: situation.fitted,
    open,
    swapMinutes: options.swapMinutes,
    risk: machine.limits.risk,
    gradeOf: grade,
    leaves: (setting, from) => leavesLane(crossings(setting), from),
  });
  const planned = runPlans({ request, night, need, breathed, situation, odds, settings, gradeOf: grade });
  const counted = { choice, candidates, grades, runs, situation, settings };
  return {
    hours: picture({
      machine,
      need,
      night,
      breathed,
      settingAt: timeline(night, situation, { settings, swaps }),
    }),
    crossings: crossings(baseline),
    runs: planned,
    order: night.order,
    sortedRuns: night.sortedRuns,
    stints: stintsOf(planned.filter(({ state }) => state !== 'beyond-hours')),
    swaps,
    bySwapCount: bySwapCount(counted),
    runnerUp: runnerUp(counted, { solution: fresh, plan: steady.plan, cost: steady.cost }),
    kept: steady.kept,
    warnings: [
      ...nightWarnings(night),
      ...machineWarnings({
        machine,
        need,
        night,
        breathed,
        situation,
        choice,
        swapMinutes: options.swapMinutes,
        odds: openOdds,
        plan: steady.plan,
      }),
    ],
    hoursEnd: instant(night.hours.at.at(-1)!),
    baseline,
  };
}
