import type { Box } from './machine';

/** The same box sorted by size, equal sizes added up and empty ones dropped. */
export function normaliseBox(box: Box): Box {
  // Most boxes are so already, and a plan asks half a dozen times.
  if (box.every(({ size, count }, i) => count > 0 && (i === 0 || size > box[i - 1]!.size))) return box;
  const counts = new Map<number, number>();
  for (const { size, count } of box) counts.set(size, (counts.get(size) ?? 0) + count);
  return [...counts]
    .filter(([, count]) => count > 0)
    .sort(([a], [b]) => a - b)
    .map(([size, count]) => ({ size, count }));
}

/** How many pieces the box holds over all sizes. */
export function pieces(box: Box): number {
  return normaliseBox(box).reduce((sum, { count }) => sum + count, 0);
}

/** The box from `lowest` to `highest` by `step`, `count` of each: how most people describe what they own. */
export function boxFromRange(range: {
  readonly lowest: number;
  readonly highest: number;
  readonly step: number;
  readonly count: number;
}): Box {
  const { lowest, highest, step, count } = range;
  if (!(step > 0) || highest < lowest) return [];
  // Counting the steps, not adding them up, keeps 2.5-steps exact; the half step forgives a rounded end.
  const steps = Math.floor((highest - lowest) / step + 1e-9);
  return normaliseBox(Array.from({ length: steps + 1 }, (_, i) => ({ size: lowest + i * step, count })));
}
