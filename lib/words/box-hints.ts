import { normaliseBox, pieces } from '@/lib/carb/box';
import type { Box } from '@/lib/carb/machine';
import { counted, listing } from '@/lib/words/listing';

/** "9 sizes, 27 jets: 380 × 3, 390 × 3 ..." */
export function boxSummary(box: Box): string {
  const entries = normaliseBox(box).map(({ size, count }) =>
    count === 1 ? `${size}` : `${size} × ${count}`,
  );
  return `${counted(entries.length, 'size')}, ${counted(pieces(box), 'jet')}: ${entries.join(', ')}`;
}

/** What a racer should know about a box before trusting it; nothing here is an error. */
export function boxHints(box: Box, mains: readonly number[]): readonly string[] {
  const owned = new Map(normaliseBox(box).map(({ size, count }) => [size, count]));
  const needed = new Map<number, number>();
  for (const main of mains) needed.set(main, (needed.get(main) ?? 0) + 1);
  const lacking = [...needed].filter(([size, count]) => (owned.get(size) ?? 0) < count);
  const few = [...owned].filter(([, count]) => count < mains.length).map(([size]) => String(size));
  return [
    ...lacking.map(([size, count]) =>
      count === 1
        ? `The baseline’s ${size} is not in the box. Count the jets in the engine too.`
        : `The baseline needs ${count} jets of ${size}, the box has ${owned.get(size) ?? 0}. Count the jets in the engine too.`,
    ),
    ...(few.length > 0 && new Set(mains).size <= 1
      ? [
          `Too few for all ${mains.length} carburettors: ${listing(few)}. They will not be planned on their own.`,
        ]
      : []),
  ];
}
