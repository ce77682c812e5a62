import type { Trim } from './machine';

/**
 * Natural log of the fuel a trim position gives over the baseline position's.
 *
 *     ln f = (position − baseline) ln(1 + r)
 *
 * Positions compound, so that going up one and down one is nothing and no position can take all the fuel away.
 */
export function logTrim(trim: Trim | null, position: number | null): number {
  if (trim === null || position === null) return 0;
  return (position - trim.baseline) * Math.log1p(trim.richerPerPosition);
}

/** Every position, leanest first. */
export function trimPositions(trim: Trim | null): readonly (number | null)[] {
  if (trim === null) return [null];
  return Array.from({ length: trim.highest - trim.lowest + 1 }, (_, i) => trim.lowest + i);
}
