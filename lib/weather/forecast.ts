import type { LeftOut } from '@/lib/contract/contradiction';
import type { PressureSource, SourceName } from '@/lib/contract/source-name';
import type { Hour, HourSeries } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import type { Coordinates } from './place';
import type { SourceTry } from './problem';

/** An hour with who said what: a series never mixes services without saying so. */
export type ForecastHour = Hour & {
  readonly temperatureBy: SourceName;
  readonly pressureBy: PressureSource;
};

/** Hourly air at the site, from one service, with all that is needed to say how far to trust it. */
export type Forecast = Omit<HourSeries, 'hours'> & {
  readonly hours: readonly ForecastHour[];
  /** Hours the service lists but has no value for, and that were not filled. */
  readonly missing: readonly Instant[];
  /** Hours the service gave and that cannot be right, and why. They are filled or missing like any other gap. */
  readonly leftOut: readonly LeftOut[];
  readonly place: Coordinates;
  /** Given by the person, or the service's own height for the place. */
  readonly elevationFrom: 'given' | 'service';
  readonly by: SourceName;
  /** 'stale': no service answered, this is the last good copy. */
  readonly freshness: 'fresh' | 'stale';
  /** Asking again before this gives the same answer. */
  readonly freshUntil: Instant;
  readonly tries: readonly SourceTry[];
};
