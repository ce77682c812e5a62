import type { PlacedObservation } from './observation';
import type { StationProblem } from './station-problem';

/** What the stations around a place observed, nearest first, and which were asked in vain. */
export type Observed = {
  readonly observations: readonly PlacedObservation[];
  readonly leftOut: readonly { readonly station: string; readonly code: StationProblem['code'] }[];
};
