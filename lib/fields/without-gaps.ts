/** Without the keys that hold nothing, so that what is saved has only what was said. */
export function withoutGaps<T extends object>(parts: T): Partial<T> {
  // fromEntries forgets the keys' types; they are those of `parts`, some left out.
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined)) as Partial<T>;
}
