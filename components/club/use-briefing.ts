'use client';

import { useMemo } from 'react';
import { type Briefing, briefingSteps } from '@/lib/club/briefing';
import type { Club } from '@/lib/night/club';
import type { Instant } from '@/lib/time/instant';
import { useSteps } from './use-steps';

/** The briefing as of now; null until it has been planned once, and while there is nobody to plan for. */
export function useBriefing(
  { racers, night }: Pick<Club, 'racers' | 'night'>,
  now: Instant,
): Briefing | null {
  const start = useMemo(
    () => (night === null || racers.length === 0 ? null : () => briefingSteps(racers, { ...night, now })),
    [racers, night, now],
  );
  return useSteps(start);
}
