import { logDelivered } from '@/lib/carb/drift';
import type { Machine, Setting } from '@/lib/carb/machine';
import { crossingsOf } from './crossings';
import { oddsOfRuns } from './draw-needs';
import {
  type Delivered,
  type Grade,
  gradeOf,
  type Judge,
  judgeOf,
  leanThreshold,
  richThreshold,
} from './grade';
import { type MachineNeed, machineNeed, meanLogIdeal } from './machine-need';
import { withFuel } from './need-curve';
import type { Breathed, PreparedNight } from './night';
import { nightPassages } from './night-passages';
import type { RunOdds } from './run-odds';
import type { Crossing } from './types';

/** One machine in one night: everything about it that does not depend on what is fitted. */
export type View = {
  readonly machine: Machine;
  readonly night: PreparedNight;
  readonly need: MachineNeed;
  readonly judge: Judge;
  readonly breathed: Breathed;
  /** By sorted run. */
  readonly odds: readonly RunOdds[];
  readonly deliveredOf: (setting: Setting) => Delivered;
  readonly gradeOf: (run: number, setting: Setting) => Grade;
  readonly crossingsOf: (setting: Setting) => readonly Crossing[];
};

/** The night as this machine breathes it, its fuel's own density included where that counts. */
function breathedBy({ intakeOffset, fuelDensity }: Machine, night: PreparedNight): Breathed {
  const breathed = night.breathe(intakeOffset);
  if (fuelDensity === null) return breathed;
  return {
    ...breathed,
    windows: breathed.windows.map((curve, i) => withFuel(curve, night.windows[i]!.track, fuelDensity)),
    hours: withFuel(breathed.hours, night.hours, fuelDensity),
    grid: withFuel(breathed.grid, night.grid, fuelDensity),
  };
}

/** Answers a question about a setting once, and from memory after that. */
function oncePerSetting<T>(answer: (setting: Setting) => T): (setting: Setting) => T {
  const known = new Map<string, T>();
  return (setting) => {
    const key = `${setting.trim} ${setting.mains.join('/')}`;
    const found = known.get(key) ?? answer(setting);
    known.set(key, found);
    return found;
  };
}

export function viewOf(machine: Machine, night: PreparedNight): View {
  const need = machineNeed(machine);
  const judge = judgeOf(machine);
  const breathed = breathedBy(machine, night);
  const { windows, normals } = night;
  const odds = oddsOfRuns({ machine: need, curves: breathed.windows, windows, normals });
  const passages = nightPassages({
    machine: need,
    curve: breathed.grid,
    track: night.grid,
    mean: meanLogIdeal(need, breathed.grid),
  });
  const deliveredOf = oncePerSetting((setting): Delivered => {
    const delivered = logDelivered(machine, setting);
    return { delivered, leanest: Math.min(...delivered), richest: Math.max(...delivered) };
  });
  const books = odds.map((run) => oncePerSetting((setting) => gradeOf(run, deliveredOf(setting), judge)));
  return {
    machine,
    night,
    need,
    judge,
    breathed,
    odds,
    deliveredOf,
    gradeOf: (run, setting) => books[run]!(setting),
    crossingsOf: oncePerSetting((setting) => {
      const delivered = deliveredOf(setting);
      return crossingsOf(passages, {
        lean: leanThreshold(delivered, judge),
        rich: richThreshold(delivered, judge),
      });
    }),
  };
}
