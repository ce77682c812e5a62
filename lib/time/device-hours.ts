import type { HourStyle } from './zone';

/**
 * How a language writes the clock, by its usual hour cycle (CLDR); 24 hours where the device names no language, as one
 * without a locale does ("C").
 */
export function deviceHours(language: string): HourStyle {
  try {
    const { hourCycle } = new Intl.DateTimeFormat(language, { hour: 'numeric' }).resolvedOptions();
    return hourCycle === 'h11' || hourCycle === 'h12' ? '12' : '24';
  } catch {
    return '24';
  }
}
