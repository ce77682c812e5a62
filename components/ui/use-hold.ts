'use client';

import { useCallback, useEffect, useRef, useState } from 'react';

/** Longer than a double tap with gloves on, shorter than anybody waits. */
const HOLD_MS = 2000;

/**
 * Holds a place for a moment after it was pressed, so that a second tap does not meet whatever stands there next.
 * `held` is what was pressed while it is held, else null.
 */
export function useHold(): { readonly held: string | null; readonly hold: (label: string) => void } {
  const [held, setHeld] = useState<string | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const hold = useCallback((label: string) => {
    if (timer.current !== null) clearTimeout(timer.current);
    setHeld(label);
    timer.current = setTimeout(() => setHeld(null), HOLD_MS);
  }, []);
  useEffect(
    () => () => {
      if (timer.current !== null) clearTimeout(timer.current);
    },
    [],
  );
  return { held, hold };
}
