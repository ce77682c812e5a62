import type { Air } from '@/lib/air/air';
import { jetArea, sizeOfArea } from './jets';
import type { Machine } from './machine';
import { type Exponents, logIdealArea } from './response';

/** The continuous main for every carburettor that keeps the baseline's mixture in given weather, in the machine's marking. */
export function idealSizes(machine: Machine, ambientAir: Air, exponents?: Exponents): number[] {
  return sizesAt(machine, logIdealArea(machine, ambientAir, exponents));
}

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
