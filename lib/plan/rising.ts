import type { Candidate } from './candidates';

/** The candidates by how much fuel their leanest or richest carburettor gets, the least first. */
export function risingBy(candidates: readonly Candidate[], by: 'leanest' | 'richest'): Int32Array {
  return Int32Array.from(candidates.keys()).sort((a, b) => candidates[a]![by] - candidates[b]![by]);
}

/** The first of 0 .. count − 1 that is so, where all after one that is so are so too; count where none is. */
export function firstFrom(count: number, isSo: (i: number) => boolean): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isSo(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
