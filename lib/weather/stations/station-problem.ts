import type { SourceProblem } from '@/lib/weather/problem';

/** In what way an observation contradicts itself, its station or the clock. */
export const OBSERVATION_DOUBTS = [
  /** No temperature, or one that the service's own checks refuse. */
  'no-temperature',
  'too-old',
  'not-yet',
  /** Of another station, or from elsewhere. */
  'other-place',
  'other-height',
  /** The report as broadcast says something else. */
  'report-disagrees',
  'humidity-disagrees',
  'pressure-disagrees',
] as const;
export type ObservationDoubt = (typeof OBSERVATION_DOUBTS)[number];

/** Why a station that is listed has nothing to offer. */
export type StationProblem = SourceProblem | { readonly code: ObservationDoubt };
