'use client';

import { useEffect, useState } from 'react';

/** The value once it has not changed for a while: nothing is asked at every key. */
export function useSettled<V>(value: V, afterMs: number): V {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), afterMs);
    return () => clearTimeout(timer);
  }, [value, afterMs]);
  return settled;
}
