'use client';

import { useSyncExternalStore } from 'react';
import { type Instant, instant } from '@/lib/time/instant';

const STEP_MS = 30_000;

/** The same number for the whole of a step, so that a render in between changes nothing. */
const currentStep = () => Math.floor(Date.now() / STEP_MS) * STEP_MS;

function everyStep(listener: () => void): () => void {
  const timer = setInterval(listener, STEP_MS / 6);
  // A phone that slept shows the old time until told otherwise.
  document.addEventListener('visibilitychange', listener);
  return () => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', listener);
  };
}

/** The time, to half a minute; null on the server and for the first render, which must look the same. */
export function useNow(): Instant | null {
  const step = useSyncExternalStore<number | null>(everyStep, currentStep, () => null);
  return step === null ? null : instant(step);
}
