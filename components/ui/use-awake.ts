'use client';

import { useEffect, useState } from 'react';

/** `kept`: the screen stays on. `cannot`: this browser does not offer it, or refused (a low battery). */
export type Awake = 'asking' | 'kept' | 'cannot';

/** Keeps the screen on while the component is shown; asks again when the page comes back to the front. */
export function useAwake(): Awake {
  const [awake, setAwake] = useState<Awake>('asking');
  useEffect(() => {
    let stopped = false;
    let lock: WakeLockSentinel | null = null;
    async function ask() {
      if (document.visibilityState !== 'visible') return;
      try {
        const granted = await navigator.wakeLock.request('screen');
        if (stopped) return void granted.release();
        lock = granted;
        setAwake('kept');
      } catch {
        if (!stopped) setAwake('cannot');
      }
    }
    void ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      stopped = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, []);
  return awake;
}
