import { normaliseBox } from '@/lib/carb/box';
import { logDelivered } from '@/lib/carb/drift';
import { jetArea } from '@/lib/carb/jets';
import type { Machine, Setting } from '@/lib/carb/machine';
import { sameMains, sameSetting } from '@/lib/carb/same-setting';
import { logSizeStep } from '@/lib/carb/size-step';
import { trimPositions } from '@/lib/carb/trim';

/** A setting that can be fitted, and the log of the fuel it passes over the baseline's, leanest and richest carburettor. */
export type Candidate = {
  readonly setting: Setting;
  /** Candidates of one group have the same jets. */
  readonly group: number;
  /** For each carburettor. */
  readonly delivered: readonly number[];
  readonly leanest: number;
  readonly richest: number;
};

/** One jet of the box, as the log of its area. */
type Piece = { readonly size: number; readonly area: number };

/** The pieces of the box, smallest first; more of one size than there are carburettors change nothing. */
export function piecesOf(machine: Machine): readonly Piece[] {
  const most = machine.carburettors.length;
  return normaliseBox(machine.box).flatMap(({ size, count }) =>
    Array<Piece>(Math.min(count, most)).fill({ size, area: Math.log(jetArea(machine.marking, size)) }),
  );
}

/**
 * The leanest way to fit every carburettor so that none is leaner than `level` (log of area over its baseline jet's):
 * the carburettor with the largest baseline picks first (`order`), each takes the smallest piece that is left and large enough,
 * and what was picked is handed out in the order of the baselines. null where the box cannot.
 *
 * Nothing else needs to be looked at: no other way to keep every carburettor at or above `level` passes less fuel in the
 * sum of any convex loss, and none has a leaner richest carburettor. One more jet in the box can only help.
 */
function leanestAbove(
  level: number,
  baselines: readonly number[],
  { order, pieces }: { readonly order: readonly number[]; readonly pieces: readonly Piece[] },
): readonly number[] | null {
  const left = [...pieces];
  const picked: Piece[] = [];
  for (const i of order) {
    // A level is itself a difference of two logs: a jet that sits on it must not fall out by the last bit.
    const index = left.findIndex(({ area }) => area - baselines[i]! >= level - 1e-12);
    if (index === -1) return null;
    picked.push(...left.splice(index, 1));
  }
  picked.sort((a, b) => b.area - a.area || b.size - a.size);
  const mains = new Array<number>(baselines.length);
  for (const [place, i] of order.entries()) mains[i] = picked[place]!.size;
  return mains;
}

/**
 * Every jet set worth fitting, leanest first. Empty where the box has too few pieces. A set that gives up the baseline's
 * stagger between the carburettors is left out where the next richer ones keep it: the stagger was proven too.
 */
export function jetSets(machine: Machine): readonly (readonly number[])[] {
  const sets = unbeatenSets(machine);
  const keeps = sets.map((mains) => keepsStagger(machine, mains));
  return sets.filter((mains, i) => {
    if (keeps[i]) return true;
    const next = sets.find((_, j) => j > i && keeps[j]);
    return next === undefined || meanStep(machine, mains, next) > 1;
  });
}

/** Fuel of every carburettor over its baseline, as far apart as its jets, in sizes. */
const MOST_APART = 0.75;

/** True where no carburettor is set apart from the others by most of a size against the baseline. */
function keepsStagger(machine: Machine, mains: readonly number[]): boolean {
  const delivered = logDelivered(machine, { mains, trim: null });
  const apart = Math.max(...delivered) - Math.min(...delivered);
  return apart === 0 || apart <= MOST_APART * logSizeStep(machine, mains[0]!);
}

/** How much richer another set is on the mean, in sizes. */
function meanStep(machine: Machine, from: readonly number[], to: readonly number[]): number {
  const area = (mains: readonly number[]) =>
    mains.reduce((sum, main) => sum + Math.log(jetArea(machine.marking, main)), 0) / mains.length;
  return (area(to) - area(from)) / logSizeStep(machine, from[0]!);
}

/** The sets that no other one beats in both its leanest and its richest carburettor, leanest first. */
export function unbeatenSets(machine: Machine): readonly (readonly number[])[] {
  const baselines = machine.carburettors.map(
    ({ main }, i) => Math.log(jetArea(machine.marking, main)) + (machine.tonight?.logAreas[i] ?? 0),
  );
  const order = baselines.map((_, i) => i).sort((i, j) => baselines[j]! - baselines[i]! || i - j);
  const pieces = piecesOf(machine);
  const levels = pieces.flatMap(({ area }) => baselines.map((baseline) => area - baseline));
  const sets = new Map<string, readonly number[]>();
  for (const level of [...new Set(levels)].sort((a, b) => a - b)) {
    const mains = leanestAbove(level, baselines, { order, pieces });
    if (mains === null) break;
    sets.set(mains.join('/'), mains);
  }
  return [...sets.values()];
}

/** All settings the plan may choose from: every jet set of the box and what is fitted, at every trim position. */
export function candidatesFor(machine: Machine, fitted: Setting): readonly Candidate[] {
  const fromBox = jetSets(machine);
  const sets = fromBox.some((mains) => sameMains(mains, fitted.mains)) ? fromBox : [...fromBox, fitted.mains];
  const positions = trimPositions(machine.trim);
  const settings = sets.flatMap((mains, group) =>
    positions.map((trim) => ({ setting: { mains, trim }, group })),
  );
  return settings.map(({ setting, group }) => {
    const delivered = logDelivered(machine, setting);
    return { setting, group, delivered, leanest: Math.min(...delivered), richest: Math.max(...delivered) };
  });
}

export function indexOfSetting(candidates: readonly Candidate[], setting: Setting): number {
  return candidates.findIndex((candidate) => sameSetting(candidate.setting, setting));
}
