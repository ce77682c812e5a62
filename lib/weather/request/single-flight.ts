/** Runs one job per key at a time: whoever asks for the same while it runs gets the same promise. */
export type SingleFlight<T> = { readonly run: (key: string, job: () => Promise<T>) => Promise<T> };

export function createSingleFlight<T>(): SingleFlight<T> {
  const running = new Map<string, Promise<T>>();
  return {
    run(key, job) {
      const already = running.get(key);
      if (already !== undefined) return already;
      const started = job().finally(() => running.delete(key));
      running.set(key, started);
      return started;
    },
  };
}
