'use client';

import { useEffect, useState } from 'react';
import { whenAtRest } from './when-at-rest';

/**
 * Whether this browser has a copy of everything by now, and the page is at rest: what is asked for then costs no network
 * and keeps no finger waiting. A browser without an offline worker waits for the first touch or key instead.
 */
export function useWorkerReady(): boolean {
  const [ready, setReady] = useState(false);
  useEffect(() => {
    if (ready) return;
    let stop = () => {};
    const come = () => {
      stop();
      stop = whenAtRest(() => setReady(true));
    };
    void navigator.serviceWorker?.ready.then(come);
    for (const sign of TOUCHES) window.addEventListener(sign, come, { once: true, passive: true });
    return () => {
      for (const sign of TOUCHES) window.removeEventListener(sign, come);
      stop();
    };
  }, [ready]);
  return ready;
}

const TOUCHES = ['pointerdown', 'keydown'] as const;
