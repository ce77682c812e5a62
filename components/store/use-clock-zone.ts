'use client';

import { useMemo } from 'react';
import { deviceHours } from '@/lib/time/device-hours';
import { type ClockZone, clockFace, type HourStyle } from '@/lib/time/zone';
import { usePreferences } from './use-preferences';

/** The zone with its clock as the person reads it: as chosen, else as the device's language writes it. */
export function useClockZone(zone: string): ClockZone {
  const hours = useHours();
  return useMemo(() => ({ zone, hours }), [zone, hours]);
}

/** Writes a time of the 24-hour clock as the person reads it. */
export function useClockFace(): (time: string) => string {
  const hours = useHours();
  return (time) => clockFace(time, hours);
}

/** The clock alone, for times that need no zone. */
export function useHours(): HourStyle {
  const { preferences, known } = usePreferences();
  const { clock = 'auto' } = preferences;
  // Before the store is open the first render must look as on the server, which has no device.
  if (!known) return '24';
  return clock === 'auto' ? deviceHours(navigator.language) : clock;
}
