import { jetArea, sizeOfArea } from './jets';
import type { Machine } from './machine';

/** The main for every carburettor at a log ratio of area to the baseline; stagger between carburettors is kept. */
export function sizesAt(machine: Machine, logArea: number): number[] {
  const grow = Math.exp(logArea);
  return machine.carburettors.map(({ main }, i) =>
    sizeOfArea(
      machine.marking,
      jetArea(machine.marking, main) * grow * Math.exp(machine.tonight?.logAreas[i] ?? 0),
    ),
  );
}
