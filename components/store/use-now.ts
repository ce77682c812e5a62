'use client';

import { useSyncExternalStore } from 'react';
import { clockStep, type Instant } from '@/lib/time/instant';

/** How often the clock is looked at, several times in a step of it [ms]. */
const LOOK_MS = 5000;

const currentStep = () => clockStep(Date.now());

function everyStep(listener: () => void): () => void {
  const timer = setInterval(listener, LOOK_MS);
  // A phone that slept shows the old time until told otherwise.
  document.addEventListener('visibilitychange', listener);
  return () => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', listener);
  };
}

/** The time, to half a minute; null on the server and for the first render, which must look the same. */
export function useNow(): Instant | null {
  return useSyncExternalStore<Instant | null>(everyStep, currentStep, () => null);
}
