'use client';

import { startTransition, useEffect, useState } from 'react';

/** Long enough to get somewhere, short enough that a finger on the glass is never kept waiting. */
const SLICE_MS = 8;

/**
 * What a generator comes to, worked out in slices between which the page goes on answering; the last result stands
 * until then. `start` must be the same function as long as its work is the same; null where there is none to do.
 */
export function useSteps<T>(start: (() => Generator<void, T>) | null): T | null {
  const [result, setResult] = useState<T | null>(null);
  useEffect(() => {
    if (start === null) {
      setResult(null);
      return;
    }
    const steps = start();
    let timer = setTimeout(slice, 0);
    function slice() {
      const until = performance.now() + SLICE_MS;
      let step = steps.next();
      while (!step.done && performance.now() < until) step = steps.next();
      if (step.done) {
        const { value } = step;
        startTransition(() => setResult(value));
      } else timer = setTimeout(slice, 0);
    }
    return () => clearTimeout(timer);
  }, [start]);
  return result;
}
