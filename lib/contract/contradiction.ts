import type { Instant } from '@/lib/time/instant';

/** In what way an answer contradicts itself, the question, the clock or the laws of air. */
export const CONTRADICTIONS = [
  /** Its coordinates are those of another place. */
  'other-place',
  /** It is for another height than was asked, or its ground lies too far from the place's. */
  'other-height',
  /** Its hours are not those that were asked for. */
  'other-hours',
  /** It was made too long ago. */
  'old-issue',
  /** It was made later than now. */
  'future-issue',
  /** Temperature, dew point and humidity do not belong to one air. */
  'humidity-disagrees',
  /** Station pressure, sea-level pressure and height do not belong together. */
  'pressure-disagrees',
  /** Temperature or pressure jumps as no weather does. */
  'jump',
  /** The temperature is the same for days. */
  'flat',
  /** Two values are given for one hour. */
  'two-values',
] as const;
export type Contradiction = (typeof CONTRADICTIONS)[number];

/** An hour of a service that was left out, and why. */
export type LeftOut = { readonly at: Instant; readonly code: Contradiction };
