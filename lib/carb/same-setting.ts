import type { Setting } from './machine';

export function sameMains(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((size, i) => size === b[i]);
}

/** The same jets in the same carburettors, and the same trim. */
export function sameSetting(a: Setting, b: Setting): boolean {
  return a.trim === b.trim && sameMains(a.mains, b.mains);
}
