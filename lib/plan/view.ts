import { logDelivered } from '@/lib/carb/drift';
import type { Machine, Setting } from '@/lib/carb/machine';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { crossingsOf } from './crossings';
import { type DrawRoom, freshRoom, oddsOfRuns } from './draw-needs';
import {
  type Delivered,
  type Grade,
  gradeOf,
  type Judge,
  judgeOf,
  leanThreshold,
  lossOf,
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
  /** The loss of `gradeOf` alone, which takes a fraction of its time. */
  readonly lossOf: (run: number, setting: Setting) => Ratio;
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

/**
 * Answers a question about a setting once, and from memory after that. Most are asked with the very same object, which is
 * found without writing its name.
 */
function oncePerSetting<T>(answer: (setting: Setting) => T): (setting: Setting) => T {
  const same = new Map<Setting, T>();
  const known = new Map<string, T>();
  return (setting) => {
    const heard = same.get(setting);
    if (heard !== undefined) return heard;
    const key = `${setting.trim} ${setting.mains.join('/')}`;
    const found = known.get(key) ?? answer(setting);
    known.set(key, found);
    same.set(setting, found);
    return found;
  };
}

/** What is known of one setting, its grades and losses by sorted run, as far as they were asked for. */
type Book = { readonly passed: Delivered; readonly grades: Grade[]; readonly losses: Ratio[] };

/**
 * A function of its own, so that what it hands back does not keep the draws of all runs in memory for as long as there is
 * a plan: a hundred kilobytes for each.
 */
function crossingsIn(
  { grid }: PreparedNight,
  { machine, need, judge, breathed }: Pick<View, 'machine' | 'need' | 'judge' | 'breathed'>,
): (setting: Setting) => readonly Crossing[] {
  const curve = breathed.grid;
  return (setting) => {
    const passed = passedBy(machine, setting);
    const passages = nightPassages({ machine: need, curve, track: grid, mean: meanLogIdeal(need, curve) });
    return crossingsOf(passages, { lean: leanThreshold(passed, judge), rich: richThreshold(passed, judge) });
  };
}

function passedBy(machine: Machine, setting: Setting): Delivered {
  const delivered = logDelivered(machine, setting);
  return { delivered, leanest: Math.min(...delivered), richest: Math.max(...delivered) };
}

/** @param room where the draws are kept: one that is used again makes the view before this one worthless */
export function viewOf(machine: Machine, night: PreparedNight, room: DrawRoom = freshRoom): View {
  const need = machineNeed(machine);
  const judge = judgeOf(machine);
  const breathed = breathedBy(machine, night);
  const { windows, normals } = night;
  const odds = oddsOfRuns({ machine: need, curves: breathed.windows, windows, normals, room });
  const bookOf = oncePerSetting((setting): Book => {
    return { passed: passedBy(machine, setting), grades: [], losses: [] };
  });
  const deliveredOf = (setting: Setting) => bookOf(setting).passed;
  return {
    machine,
    night,
    need,
    judge,
    breathed,
    odds,
    deliveredOf,
    gradeOf: (run, setting) => {
      const { passed, grades } = bookOf(setting);
      grades[run] ??= gradeOf(odds[run]!, passed, judge);
      return grades[run]!;
    },
    lossOf: (run, setting) => {
      const { passed, grades, losses } = bookOf(setting);
      losses[run] ??= grades[run]?.loss ?? ratio(lossOf(odds[run]!, passed, judge));
      return losses[run]!;
    },
    crossingsOf: oncePerSetting(crossingsIn(night, { machine, need, judge, breathed })),
  };
}
