import type { Box } from '@/lib/carb/machine';
import type { Snapshot, SnapshotValues } from '@/lib/store/store-type';

type BoxTold = {
  /** Of a box that is here, or the key of a new one. */
  readonly boxId: string;
  readonly name: string;
  readonly entries: Box;
  /** Who may take from it, of those asked about. */
  readonly sharers: readonly string[];
  readonly asked: readonly string[];
};

/** The store with a box that several machines take their jets from; who no longer shares it has the box of its own again. */
export function withBoxTold(
  current: Snapshot,
  { boxId, name, entries, sharers, asked }: BoxTold,
): SnapshotValues {
  const value = { name, entries: [...entries] };
  const known = current.boxes.some(({ id }) => id === boxId);
  return {
    ...current,
    boxes: known
      ? current.boxes.map((box) => (box.id === boxId ? { ...box, value } : box))
      : [...current.boxes, { id: boxId, value }],
    machines: current.machines.map((machine) => {
      if (!asked.includes(machine.id)) return machine;
      const shares = sharers.includes(machine.id);
      if (!shares && machine.value.boxId !== boxId) return machine;
      return { ...machine, value: { ...machine.value, boxId: shares ? boxId : null } };
    }),
  };
}
