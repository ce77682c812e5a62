import type { PlanChange, PlanDifference, SwapAct } from '@/lib/plan/compared';
import type { Plan } from '@/lib/plan/types';
import { isDangerous } from '@/lib/standing/danger';
import { formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import { planClock, runName } from './runs';
import { actText, settingText } from './settings';
import { type Clock, clockText } from './times';
import type { Voice } from './voice';

/** Half of what a good thermometer can tell apart; less is not a reason worth a clause. */
const WORTH_SAYING_K = 0.25;

/** What changed between an accepted plan and a new one, act by act; `after` is the new one. */
export function changeSentences(difference: PlanDifference, after: Plan, voice: Voice): readonly string[] {
  const clock = planClock(after, voice.zone);
  return difference.changes.map((change) => `${changeText(change, after, clock)}${why(change, voice)}.`);
}

function changeText(change: PlanChange, plan: Plan, clock: Clock): string {
  switch (change.code) {
    case 'start-changed':
      return `The start moved from ${settingText(change.from)} to ${settingText(change.to)}`;
    case 'swap-moved':
      return `The swap to ${settingText(change.to.to)} moved from ${at(change.from, clock)} to ${at(change.to, clock)}, before ${runName(plan, change.to.beforeRun)}`;
    case 'swap-added':
      return `New: ${actText(change.swap.from, change.swap.to)} before ${runName(plan, change.swap.beforeRun)} (${at(change.swap, clock)})`;
    case 'swap-dropped': {
      const swap = `the swap to ${settingText(change.swap.to)} at ${at(change.swap, clock)}`;
      return isMissed(change.swap, plan)
        ? `Not made in time: ${swap}`
        : `Dropped: ${swap} is no longer needed`;
    }
    case 'swap-target-changed':
      return `The swap at ${at(change.to, clock)} is now to ${settingText(change.to.to)}, not ${settingText(change.from.to)}`;
  }
}

/** A swap that its run still needs is gone from the plan because it is too late for it. */
function isMissed({ beforeRun }: SwapAct, plan: Plan): boolean {
  const run = plan.runs.find((each) => each.run === beforeRun);
  return run !== undefined && isDangerous(run);
}

const at = (swap: SwapAct, clock: Clock): string => clockText(swap.windowStart, clock);

/** ": it is now 3.8 °F colder", where the temperature moved enough to be the reason. */
function why(change: PlanChange, { units }: Voice): string {
  if (change.code === 'start-changed' || Math.abs(change.colder) < WORTH_SAYING_K) return '';
  // A swap to a richer jet is not dropped because it turned colder, but for an act before it.
  if (change.code === 'swap-dropped' && isRicher(change.swap) === change.colder > 0) return '';
  const step = formatTemperatureStep(kelvinDifference(Math.abs(change.colder)), units);
  return `: it is now ${step} ${change.colder > 0 ? 'colder' : 'warmer'}`;
}

function isRicher({ from, to }: SwapAct): boolean {
  return to.mains.some((main, i) => main > (from.mains[i] ?? main));
}
