import { HOUR_MS, type Instant } from '@/lib/time/instant';
import type { Kelvin, Metre, Pascal, SpeedMs } from '@/lib/units/quantity';
import type { Coordinates } from '@/lib/weather/place';

/** The air as a weather station observed it, at the station. */
export type Observation = {
  /** Its code, such as KDLH. */
  readonly station: string;
  readonly at: Instant;
  readonly temperature: Kelvin;
  /** Over liquid water; null: not observed. */
  readonly dewPoint: Kelvin | null;
  /** Altimeter setting (QNH), which is not the pressure that is there; null: not observed. */
  readonly altimeter: Pascal | null;
  readonly wind: SpeedMs | null;
};

/** One whose station's place is known. */
export type PlacedObservation = Observation & {
  readonly name: string;
  readonly place: Coordinates;
  readonly elevation: Metre;
};

/** An observation older than this tells little of now, and its station may be silent. Judgement. */
export const OLDEST_OBSERVATION_MS = 3 * HOUR_MS;
/** Clocks differ; a report is dated some minutes ahead now and then. Judgement. */
export const OBSERVATION_AHEAD_MS = HOUR_MS / 2;
