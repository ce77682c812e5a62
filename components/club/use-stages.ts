'use client';

import { startTransition, useEffect, useState } from 'react';

/** How many parts of a long page are there: one more with every breath, so that no single one takes the page away. */
export function useStages(most: number): number {
  const [stage, setStage] = useState(1);
  useEffect(() => {
    if (stage >= most) return;
    const timer = setTimeout(() => startTransition(() => setStage(stage + 1)), 0);
    return () => clearTimeout(timer);
  }, [stage, most]);
  return Math.min(stage, most);
}
