import { normaliseBox } from '@/lib/carb/box';
import type { Box } from '@/lib/carb/machine';
import type { BoxRecord } from '@/lib/store/records';
import { sameName } from '@/lib/store/told-apart';

type BoxEntry = { readonly id: string; readonly value: BoxRecord };
type Sharing = { readonly sharedBox?: string | undefined; readonly machine: { readonly box: Box } };

export type SharedBoxes = {
  /** Boxes that were not there before. */
  readonly added: readonly BoxEntry[];
  /** null for who has a box of his own. */
  readonly idOf: (racer: Sharing) => string | null;
};

/**
 * The boxes newcomers share, by their names. A box that is here keeps its jets, and lines that name the same new one
 * tell of the same jets: each size counts as often as the fullest line says, never added up.
 */
export function sharedBoxes(
  here: readonly BoxEntry[],
  racers: readonly Sharing[],
  newId: () => string,
): SharedBoxes {
  const ids = new Map(here.map(({ id, value }) => [sameName(value.name), id]));
  const added = new Map<string, { id: string; name: string; counts: Map<number, number> }>();
  for (const { sharedBox = '', machine } of racers) {
    const key = sameName(sharedBox);
    if (key === '' || (ids.has(key) && !added.has(key))) continue;
    const box = added.get(key) ?? { id: newId(), name: sharedBox.trim(), counts: new Map() };
    for (const { size, count } of normaliseBox(machine.box))
      box.counts.set(size, Math.max(box.counts.get(size) ?? 0, count));
    added.set(key, box);
    ids.set(key, box.id);
  }
  return {
    added: [...added.values()].map(({ id, name, counts }) => ({
      id,
      value: { name, entries: [...normaliseBox([...counts].map(([size, count]) => ({ size, count })))] },
    })),
    idOf: ({ sharedBox = '' }) => (sharedBox === '' ? null : (ids.get(sameName(sharedBox)) ?? null)),
  };
}
