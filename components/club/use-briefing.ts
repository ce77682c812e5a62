'use client';

import { startTransition, useEffect, useState } from 'react';
import { type Briefing, briefingSteps } from '@/lib/club/briefing';
import type { Instant } from '@/lib/time/instant';
import type { Club } from './club';

/** Long enough to get somewhere, short enough that a finger on the glass is never kept waiting. */
const SLICE_MS = 8;

/** The briefing, planned in slices between which the page goes on answering; the last one stands until then. */
export function useBriefing(
  { racers, night }: Pick<Club, 'racers' | 'night'>,
  now: Instant,
): Briefing | null {
  const [briefing, setBriefing] = useState<Briefing | null>(null);
  useEffect(() => {
    if (night === null) {
      setBriefing(null);
      return;
    }
    const steps = briefingSteps(racers, { ...night, now });
    let timer = setTimeout(slice, 0);
    function slice() {
      const until = performance.now() + SLICE_MS;
      let step = steps.next();
      while (!step.done && performance.now() < until) step = steps.next();
      if (step.done) {
        const { value } = step;
        startTransition(() => setBriefing(value));
      } else timer = setTimeout(slice, 0);
    }
    return () => clearTimeout(timer);
  }, [racers, night, now]);
  return briefing;
}
