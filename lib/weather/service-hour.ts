import type { Hour } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import type { Kelvin, Metre, Pascal, Ratio } from '@/lib/units/quantity';
import type { Coordinates } from './place';

/** One hour as a service gave it, in our units. null: the service has no value; 0 °C and 0 % are values. */
export type ServiceHour = Pick<Hour, 'at' | 'spread' | 'sky'> & {
  readonly temperature: Kelvin | null;
  /** Over liquid water. */
  readonly relativeHumidity: Ratio | null;
  readonly dewPoint: Kelvin | null;
  /** At `elevation` of the answer. */
  readonly stationPressure: Pascal | null;
  readonly seaLevelPressure: Pascal | null;
};

/** What a service's answer says, before it is moved to the site. */
export type ServiceAnswer = {
  /** By time, strictly increasing. */
  readonly hours: readonly ServiceHour[];
  /** The height that temperature and station pressure are for. */
  readonly elevation: Metre;
  readonly issuedAt: Instant | null;
  /** Where the service says its numbers are for: the middle of a cell, or the point asked for; null where it does not. */
  readonly place: Coordinates | null;
  /** Hours for which it gives two values that differ. */
  readonly conflicting: readonly Instant[];
};
