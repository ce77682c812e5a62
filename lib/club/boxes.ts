import { normaliseBox } from '@/lib/carb/box';
import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import { markingKey, type PlannedRacer } from './racer';

/** How many pieces of a size. */
export type Pieces = ReadonlyMap<number, number>;

/** One box with those who take their jets from it. */
export type ClubBox = {
  readonly boxId: string;
  /** Jets of another marking are other jets, whatever their number. */
  readonly marking: string;
  readonly owners: readonly PlannedRacer[];
  readonly owned: Pieces;
  /** The most of each size that its owners have in their engines at once over the night, each owner for himself. */
  readonly needed: Pieces;
};

function add(to: Map<number, number>, size: number, count: number): void {
  to.set(size, (to.get(size) ?? 0) + count);
}

function piecesOf(mains: Setting['mains']): Pieces {
  const pieces = new Map<number, number>();
  for (const main of mains) add(pieces, main, 1);
  return pieces;
}

/** The most of each size over several settings. */
export function mostAtOnce(settings: readonly Setting[]): Pieces {
  const most = new Map<number, number>();
  for (const { mains } of settings)
    for (const [size, count] of piecesOf(mains)) most.set(size, Math.max(most.get(size) ?? 0, count));
  return most;
}

/** What a racer still has use for, each setting once: what is in now, and what the plan puts in. */
function settingsToCome(planned: PlannedRacer): readonly Setting[] {
  const toCome = planned.plan.runs.filter(({ state }) => state === 'planned').map(({ setting }) => setting);
  const all = [planned.standing.inNow.setting, ...toCome];
  return all.filter((setting, i) => i === 0 || !sameSetting(setting, all[i - 1]!));
}

/** Every box of the club. Where racers share one, its pieces are counted once and the needs of all are added up. */
export function clubBoxes(planned: readonly PlannedRacer[]): readonly ClubBox[] {
  const byBox = new Map<string, PlannedRacer[]>();
  for (const each of planned) byBox.set(each.racer.boxId, [...(byBox.get(each.racer.boxId) ?? []), each]);
  return [...byBox].map(([boxId, owners]) => {
    const { machine } = owners[0]!.racer;
    const owned = new Map(normaliseBox(machine.box).map(({ size, count }) => [size, count]));
    return { boxId, marking: markingKey(machine), owners, owned, needed: neededBy(owners, owned) };
  });
}

function neededBy(owners: readonly PlannedRacer[], owned: Pieces): Pieces {
  const needed = new Map<number, number>();
  for (const owner of owners) {
    const most = mostAtOnce(settingsToCome(owner));
    // A jet that is in but not of the box, and that the plan takes out again, is nobody's want.
    for (const [size, count] of most) if (owned.has(size)) add(needed, size, count);
  }
  return needed;
}

/** What is left over in a box when its owners have what they need. */
export function spareIn({ owned, needed }: ClubBox): Pieces {
  return new Map(
    [...owned]
      .map(([size, count]) => [size, count - (needed.get(size) ?? 0)] as const)
      .filter(([, left]) => left > 0),
  );
}

/** Sizes of a shared box that its owners' plans together ask more of than are there. */
export function shortIn({ owned, needed }: ClubBox): Pieces {
  return new Map(
    [...needed]
      .map(([size, count]) => [size, count - (owned.get(size) ?? 0)] as const)
      .filter(([, missing]) => missing > 0),
  );
}
