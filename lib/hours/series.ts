import type { PressureKind } from '@/lib/air/air';
import type { Instant } from '@/lib/time/instant';
import type { Kelvin, KelvinDifference, Metre, Pascal, Ratio, SpeedMs } from '@/lib/units/quantity';

/**
 * Where an hour's temperature came from: a forecast, a person's typing, interpolation between two typed points,
 * or a short gap in a forecast that was filled.
 */
export type HourOrigin = 'forecast' | 'typed' | 'between' | 'filled';

/** What makes a night's cold besides the air: the sky, the wind at 10 m, the snow on the ground. null: not told. */
export type Sky = {
  /** Share of the sky under cloud. */
  readonly cloudCover: Ratio | null;
  readonly wind: SpeedMs | null;
  readonly snowDepth: Metre | null;
  /** The sun is up. */
  readonly daylight: boolean | null;
};

/** Air at one instant at the site. Pressure is station pressure at the site's elevation. */
export type Hour = {
  readonly at: Instant;
  readonly temperature: Kelvin;
  readonly pressure: Pascal;
  readonly pressureFrom: PressureKind;
  /** True where a person has stood by the kind of the pressure: nobody is asked twice. */
  readonly pressureConfirmed?: boolean;
  /** Over liquid water at every temperature. */
  readonly relativeHumidity: Ratio;
  /** Standard deviation of an ensemble's temperature, where a service gives one. */
  readonly spread: KelvinDifference | null;
  readonly origin: HourOrigin;
  /** True where the temperature is a model's own, with no station's past errors taken out of it; absent: nobody knows. */
  readonly rawModel?: boolean;
  /** Absent where nobody told. */
  readonly sky?: Sky;
  /** Where the pressure came from, where not from the temperature's teller. */
  readonly pressureOrigin?: HourOrigin;
  /** Short names of the services; absent: the series' own. */
  readonly temperatureBy?: string;
  readonly pressureBy?: string;
};

/** Where a series came from, for the label beside it. */
export type SeriesSource = {
  /** Short name of the service, or 'typed'. */
  readonly name: string;
  /** The credit line the service asks for; empty for typed hours. */
  readonly attribution: string;
  readonly attributionUrl: string | null;
  /** When the forecast was made (not when it was fetched); null where unknown. */
  readonly issuedAt: Instant | null;
  readonly fetchedAt: Instant | null;
  /** Height of the service's own terrain; null where unknown. */
  readonly modelElevation: Metre | null;
};

/** Hourly (or finer) air at one place, sorted by time, strictly increasing, gaps left out. */
export type HourSeries = {
  readonly hours: readonly Hour[];
  readonly elevation: Metre;
  readonly source: SeriesSource;
};
