import { canFit, normaliseBox } from '@/lib/carb/box';
import type { Setting } from '@/lib/carb/machine';
import { settingNow } from './acts';
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

/** What a racer still has use for: what is in now and what the plan puts in. Jets that are not of the box are left out. */
function settingsToCome(planned: PlannedRacer): readonly Setting[] {
  const { racer, plan } = planned;
  const toCome = plan.runs.filter(({ state }) => state === 'planned').map(({ setting }) => setting);
  return [settingNow(planned), ...toCome].filter(({ mains }) => canFit(racer.machine.box, mains));
}

/** Every box of the club. Where racers share one, its pieces are counted once and the needs of all are added up. */
export function clubBoxes(planned: readonly PlannedRacer[]): readonly ClubBox[] {
  const boxIds = [...new Set(planned.map(({ racer }) => racer.boxId))];
  return boxIds.map((boxId) => {
    const owners = planned.filter(({ racer }) => racer.boxId === boxId);
    const { machine } = owners[0]!.racer;
    const needed = new Map<number, number>();
    for (const owner of owners)
      for (const [size, count] of mostAtOnce(settingsToCome(owner))) add(needed, size, count);
    const owned = new Map(normaliseBox(machine.box).map(({ size, count }) => [size, count]));
    return { boxId, marking: markingKey(machine), owners, owned, needed };
  });
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
