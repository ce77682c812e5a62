const TICK_MS = 500;

/**
 * What `work` answers, or what `late` throws where it has not answered within `patienceMs`; where that throws nothing,
 * the wait begins anew. Counted in short ticks, so that a device that slept meanwhile has not used up the time.
 */
export function inTimeOrThrow<R>(work: Promise<R>, patienceMs: number, late: () => void): Promise<R> {
  return new Promise((resolve, reject) => {
    const tick = Math.min(TICK_MS, patienceMs);
    const ticks = Math.ceil(patienceMs / tick);
    let left = ticks;
    const timer = setInterval(() => {
      left -= 1;
      if (left > 0) return;
      left = ticks;
      try {
        late();
      } catch (error) {
        clearInterval(timer);
        reject(error);
      }
    }, tick);
    work.finally(() => clearInterval(timer)).then(resolve, reject);
  });
}
