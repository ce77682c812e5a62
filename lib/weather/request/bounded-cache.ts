/** Keeps the most recently used values, at most so many. */
export type BoundedCache<V> = {
  readonly get: (key: string) => V | undefined;
  readonly set: (key: string, value: V) => void;
  readonly size: () => number;
};

export function createBoundedCache<V>(most: number): BoundedCache<V> {
  // A Map keeps insertion order: re-inserting on use makes its first key the least recently used.
  const values = new Map<string, V>();
  const put = (key: string, value: V): void => {
    values.delete(key);
    values.set(key, value);
  };
  return {
    get(key) {
      const value = values.get(key);
      if (value !== undefined) put(key, value);
      return value;
    },
    set(key, value) {
      put(key, value);
      const oldest = values.keys().next();
      if (values.size > most && !oldest.done) values.delete(oldest.value);
    },
    size: () => values.size,
  };
}
