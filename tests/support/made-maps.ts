/** Runs something, and gives back what it gives with every map that was made by then: what a closure remembers. */
export function withMadeMaps<T>(make: () => T): {
  readonly made: T;
  readonly maps: readonly Map<unknown, unknown>[];
} {
  const maps: Map<unknown, unknown>[] = [];
  const Plain = globalThis.Map;
  class Watched<K, V> extends Plain<K, V> {
    constructor(entries?: Iterable<readonly [K, V]> | null) {
      super(entries);
      maps.push(this);
    }
  }
  globalThis.Map = Watched as MapConstructor;
  try {
    return { made: make(), maps };
  } finally {
    globalThis.Map = Plain;
  }
}
