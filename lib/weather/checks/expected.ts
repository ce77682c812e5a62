import type { Instant } from '@/lib/time/instant';
import type { Site } from '@/lib/weather/place';

/** What is known of an answer before it comes: what was asked, and the ways of the service. */
export type Expected = {
  readonly site: Site;
  /** null for past weather, which has no issue. */
  readonly now: Instant | null;
  /** No hour lies outside. */
  readonly earliest: Instant;
  readonly latest: Instant;
  /** It repeats the height it was told; else it has a ground of its own. */
  readonly repeatsElevation: boolean;
  /** It moves the temperature to the height asked for, and leaves humidity and dew point as they are. */
  readonly movesTemperatureOnly: boolean;
};
